import { logIns, offers, secondFactor, squad } from "../desk";
import { InviteForm } from "../sharing/offer-form";
import { OfferList } from "../sharing/offer-list";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { athletePath } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { LogIns } from "./log-ins";
import { PasswordForm } from "./password-form";
import { SecondFactorPart } from "./second-factor";

/** The coach's own page: with whom the squad is shared, where one is logged in, and by what. */
export function AccountScreen() {
  const desk = useDesk();
  const places = useLoad("log-ins", logIns);
  const factor = useLoad("second factor", secondFactor);
  return (
    <Page title="Account" aside={<span class="soft">{desk.coach.value?.email}</span>}>
      <People />
      <LogIns load={places} />
      <Loaded load={factor} what="password and code">
        {(seen) => (
          <>
            <PasswordForm asksCode={seen.on_since !== null} onChanged={places.again} />
            <SecondFactorPart
              seen={seen}
              onChanged={() => {
                factor.again();
                places.again();
              }}
            />
          </>
        )}
      </Loaded>
    </Page>
  );
}

function People() {
  const load = useLoad("offers", offers);
  const lines = useLoad("squad", squad);
  return (
    <section>
      <h2>Shared athletes</h2>
      <Loaded load={lines} what="the squad">
        {(athletes) => {
          const own = athletes.filter(({ right }) => right === "own");
          const shared = athletes.filter(({ right }) => right !== "own");
          return (
            <>
              <ul class="plain-list">
                {shared.map((each) => (
                  <li key={each.id}>
                    <Link to={athletePath(each.id, "sharing")}>{each.name}</Link>, {each.owner}’s
                    athlete: you may read{each.right === "write" && " and write"}
                  </li>
                ))}
              </ul>
              {own.length > 0 && (
                <>
                  <p class="aside-note">
                    To share one of yours, open the athlete’s page, Sharing and leaving. A link made
                    here invites a coach to{" "}
                    {own.length === 1
                      ? "your one athlete"
                      : `all ${own.length} that are yours today`}
                    .
                  </p>
                  <InviteForm athletes={own.map(({ id }) => id)} onMade={load.again} />
                </>
              )}
            </>
          );
        }}
      </Loaded>
      <Loaded load={load} what="links">
        {(list) => <OfferList offers={list} again={load.again} />}
      </Loaded>
    </section>
  );
}
