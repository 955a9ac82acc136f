/** "1 session", "3 sessions"; `many` where an s does not do. */
export function counted(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}
