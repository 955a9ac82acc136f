import { useEffect } from "preact/hooks";

import { AccountScreen } from "./account/account-screen";
import { AthleteScreen } from "./athlete/athlete-screen";
import { BlocksScreen } from "./blocks/blocks-screen";
import { TakeInScreen } from "./blocks/take-in-screen";
import { CalculatorScreen } from "./calculators/calculator-screen";
import { CalculatorsScreen } from "./calculators/calculators-screen";
import { catalogue, me } from "./desk";
import { ExerciseScreen } from "./exercises/exercise-screen";
import { ExercisesScreen } from "./exercises/exercises-screen";
import { CatalogueNames } from "./fields/exercise-field";
import { NewExerciseScreen } from "./exercises/new-exercise-screen";
import { OwnScreen } from "./own/own-screen";
import { SendScreen } from "./send/send-screen";
import { ask, learnExercises, useDesk, welcome } from "./shell/desk-state";
import { JoinScreen } from "./sharing/join-screen";
import { SheetsScreen } from "./sheets/sheets-screen";
import { Head } from "./shell/head";
import { Link } from "./shell/link";
import { LogInAgain, LogInPage } from "./shell/log-in";
import { Page } from "./shell/page";
import { ROOT, routeOf } from "./shell/route";
import { Loaded } from "./shell/states";
import { useLoad } from "./shell/use-load";
import { SquadScreen } from "./squad/squad-screen";
import { WriterScreen } from "./writer/writer-screen";

/** The desk: a log-in, or the head and the screen of the address. */
export function App() {
  const desk = useDesk();
  if (desk.coach.value === null) return <Arrival />;
  return (
    <>
      <Head />
      <Greeting />
      <CatalogueNames />
      <Screen />
      {desk.locked.value && <LogInAgain />}
    </>
  );
}

/** Nobody known in this browser: asks the server whether there is a log-in all the same. */
function Arrival() {
  const desk = useDesk();
  const load = useLoad("me", me);
  const coach = load.now.state === "ready" ? load.now.value : null;
  useEffect(() => {
    if (coach) welcome(desk, coach);
  }, [coach]);
  if (desk.locked.value) return <LogInPage />;
  return (
    <Page title="The desk">
      <Loaded load={load} what="your log-in">
        {() => null}
      </Loaded>
    </Page>
  );
}

/** Makes sure of the log-in that this browser remembers, and learns the catalogue. */
function Greeting() {
  const desk = useDesk();
  const logIns = desk.logIns.value;
  useEffect(() => {
    void (async () => {
      try {
        desk.coach.value = await ask(desk, me);
        learnExercises(desk, await ask(desk, catalogue));
      } catch {
        // The head says that the server is silent, or the log-in asks again.
      }
    })();
  }, [logIns]);
  return null;
}

function Screen() {
  const desk = useDesk();
  const route = routeOf(desk.path.value);
  switch (route.screen) {
    case "squad":
      return <SquadScreen />;
    case "athlete":
      return <AthleteScreen key={route.id} id={route.id} part={route.part} />;
    case "sheets":
      return <SheetsScreen key={route.id} id={route.id} />;
    case "blocks":
      return <BlocksScreen />;
    case "take-in":
      return <TakeInScreen />;
    case "writer":
      return <WriterScreen key={route.id} id={route.id} />;
    case "own":
      return <OwnScreen key={`${route.id} ${route.athlete}`} id={route.id} who={route.athlete} />;
    case "send":
      return <SendScreen key={route.id} id={route.id} />;
    case "exercises":
      return <ExercisesScreen />;
    case "new-exercise":
      return <NewExerciseScreen />;
    case "exercise":
      return <ExerciseScreen key={route.key} name={route.key} />;
    case "calculators":
      return <CalculatorsScreen />;
    case "calculator":
      return <CalculatorScreen key={route.key} name={route.key} />;
    case "account":
      return <AccountScreen />;
    case "join":
      return <JoinScreen />;
    case "nowhere":
      return (
        <Page title="No such page">
          <p>
            Nothing stands at this address. <Link to={ROOT}>Back to the squad</Link>
          </p>
        </Page>
      );
  }
}
