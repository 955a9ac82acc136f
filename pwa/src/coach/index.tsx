import { render } from "preact";

export function start(root: HTMLElement): void {
  render(<h1>Squad</h1>, root);
}
