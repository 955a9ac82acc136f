/** A code as it is easier to type: "ABCD EFGH". */
export function inFours(code: string): string {
  return code.replace(/(.{4})(?=.)/g, "$1 ");
}
