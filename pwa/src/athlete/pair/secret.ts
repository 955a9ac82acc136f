/**
 * The secret of an invitation's link stands behind the # and so never reaches a server's log. It is
 * taken out of the address before anything is drawn, and then lives in memory only.
 */
export function secretFromAddress(page: Window): string | null {
  const { pathname, hash } = page.location;
  if (pathname !== "/pair" || hash.length < 2) return null;
  page.history.replaceState(null, "", pathname);
  return hash.slice(1);
}
