/** A line of the load sheet on what hangs where, taken apart so that it can be read beside the bar. */

interface RigWords {
  /** What hangs in each place: "Left “thin, marked R”". */
  readonly places: readonly string[];
  /** How it is led, where the line says so. */
  readonly how: string | null;
}

/** Splits outside of quotation marks only: a label may hold any sign. */
export function rigInWords(line: string): RigWords {
  const [places = "", how = null] = splitOnce(line, ": ");
  return {
    places: splitAll(places, "; ").map(capitalised),
    how: how === null ? null : `${capitalised(how)}.`,
  };
}

function splitOnce(text: string, sign: string): string[] {
  const at = outsideQuotes(text, sign)[0];
  return at === undefined ? [text] : [text.slice(0, at), text.slice(at + sign.length)];
}

function splitAll(text: string, sign: string): string[] {
  const ends = [...outsideQuotes(text, sign), text.length];
  return ends.map((end, index) => {
    const before = ends[index - 1];
    return text.slice(before === undefined ? 0 : before + sign.length, end);
  });
}

/** Where the sign stands outside of quotation marks. */
function outsideQuotes(text: string, sign: string): number[] {
  const found: number[] = [];
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    if (text[at] === "“") quoted = true;
    else if (text[at] === "”") quoted = false;
    else if (!quoted && text.startsWith(sign, at)) found.push(at);
  }
  return found;
}

function capitalised(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
