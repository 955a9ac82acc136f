/** What a table of rows may hold in its columns, each tied to a field of the row. */
import type { Width } from "../fields/field";

interface Heading<T> {
  readonly field: keyof T & string;
  readonly label: string;
  readonly width?: Width;
}

interface NumberColumn<T> extends Heading<T> {
  readonly kind: "number";
  readonly unit?: string;
  /** What the document's value is multiplied by to be shown: 1000 for metres as mm. */
  readonly scale?: number;
  readonly step?: number;
  readonly whole?: boolean;
  /** What the document means where it says nothing, in the unit shown. */
  readonly usual?: number;
}

interface PlainColumn<T> extends Heading<T> {
  readonly kind: "text" | "date" | "exercise";
}

interface ListColumn<T> extends Heading<T> {
  readonly kind: "numbers" | "exercises" | "readings";
  readonly unit?: string;
  readonly hint?: string;
}

interface ChoiceColumn<T> extends Heading<T> {
  readonly kind: "choice";
  readonly choices: Readonly<Record<string, string>>;
  /** What the document means where it says nothing. */
  readonly usual: string;
}

interface TruthColumn<T> extends Heading<T> {
  readonly kind: "truth";
  readonly usual: boolean;
}

export type Column<T> =
  | NumberColumn<T>
  | PlainColumn<T>
  | ListColumn<T>
  | ChoiceColumn<T>
  | TruthColumn<T>;
