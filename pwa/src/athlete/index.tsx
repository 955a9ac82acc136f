import { render } from "preact";

export function start(root: HTMLElement): void {
  render(<h1>Today</h1>, root);
}
