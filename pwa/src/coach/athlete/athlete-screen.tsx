import type { AthletePage } from "../answers";
import { athlete } from "../desk";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { ATHLETE_PARTS, athletePath, ROOT, type AthletePart } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad, type Load } from "../shell/use-load";
import { HeldPart } from "./held-part";
import { KitPart } from "../kit/kit-part";
import { PersonPart } from "./person-part";
import { PhonesPart } from "./phones-part";
import { MonitoringPart } from "../monitoring/monitoring-part";
import { ProposalsPart } from "../proposals/proposals-part";
import { ResultsPart } from "../results/results-part";
import { ScreeningPart } from "../screening/screening-part";
import { SharingPart } from "../sharing/sharing-part";
import { RightProvider } from "../shell/right";

const PART_NAMES: Readonly<Record<AthletePart, string>> = {
  results: "Results",
  next: "Next loads",
  monitoring: "Monitoring",
  person: "Person and maxima",
  kit: "Kit",
  screening: "Screening",
  phones: "Phones",
  held: "Held entries",
  sharing: "Sharing and leaving",
};

interface AthleteScreenProps {
  readonly id: string;
  readonly part: AthletePart;
}

/** All about one athlete, a part at a time. */
export function AthleteScreen({ id, part }: AthleteScreenProps) {
  const load = useLoad(`athlete ${id}`, () => athlete(id));
  const name = load.now.state === "ready" ? load.now.value.name : "Athlete";
  return (
    <Page title={name} above={<Link to={ROOT}>Squad</Link>}>
      <nav class="parts" aria-label={name}>
        {ATHLETE_PARTS.map((each) => (
          <Link key={each} to={athletePath(id, each)} current={each === part}>
            {PART_NAMES[each]}
          </Link>
        ))}
      </nav>
      <Loaded load={load} what="this athlete">
        {(page) => (
          <RightProvider value={page.right}>
            <SharedNote page={page} />
            <Part page={page} part={part} load={load} />
          </RightProvider>
        )}
      </Loaded>
    </Page>
  );
}

/** Whose athlete this is, where it is another coach's. */
function SharedNote({ page }: { readonly page: AthletePage }) {
  if (page.right === "own") return null;
  return (
    <p class="shared-note">
      {page.name} is {page.owner}’s athlete.{" "}
      {page.right === "read"
        ? `You may read; for a change, ask ${page.owner}.`
        : "You may read and write; phones, signatures and clearances are not yours to give."}
    </p>
  );
}

interface PartProps {
  readonly page: AthletePage;
  readonly part: AthletePart;
  readonly load: Load<AthletePage>;
}

function Part({ page, part, load }: PartProps) {
  switch (part) {
    case "results":
      return <ResultsPart page={page} />;
    case "next":
      return <ProposalsPart page={page} onSent={load.again} />;
    case "monitoring":
      return <MonitoringPart id={page.id} />;
    case "person":
      return <PersonPart page={page} onSaved={load.again} />;
    case "kit":
      return <KitPart page={page} onSaved={load.again} />;
    case "screening":
      return <ScreeningPart key={page.id} athlete={page} onChanged={load.again} />;
    case "phones":
      return <PhonesPart page={page} again={load.again} />;
    case "held":
      return <HeldPart id={page.id} />;
    case "sharing":
      return <SharingPart page={page} />;
  }
}
