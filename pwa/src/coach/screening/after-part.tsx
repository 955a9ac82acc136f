import { calendarDate } from "../shell/when";
import type { PieceProps } from "./screening-part";

/** What was answered one, two and three days after occlusion work. */
export function AfterPart({ page }: Pick<PieceProps, "page">) {
  if (page.after.length === 0) return null;
  return (
    <section>
      <h2>After the work</h2>
      <ul class="plain-list">
        {page.after.map((check) => (
          <li key={`${check.on} ${check.hours}`}>
            <b>
              {calendarDate(check.on)}, {check.hours} h after
            </b>
            : {check.signs.length > 0 ? check.signs.join("; ") : "no signs"}
            {check.locks && <b> Locks occlusion work.</b>}
            {check.do_now.map((line) => (
              <div key={line} class="mend">
                {line}
              </div>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}
