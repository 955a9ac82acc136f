/**
 * The secret of an invitation's link stands behind the # and so never reaches a server's log. A link
 * that was shared with the installed app comes as text in the query, which the service worker keeps
 * from the server. Either is taken out of the address before anything is drawn, and then lives in
 * memory only.
 */
export function secretFromAddress(page: Window): string | null {
  const { pathname, hash, search, origin } = page.location;
  if (pathname !== "/pair" || (hash.length < 2 && search === "")) return null;
  page.history.replaceState(null, "", pathname);
  return hash.length > 1 ? hash.slice(1) : shared(search, `${origin}/pair#`);
}

/** From a link to this server within what was shared, whatever stands around it. */
function shared(search: string, before: string): string | null {
  const texts = [...new URLSearchParams(search).values()];
  const found = texts.find((text) => text.includes(before));
  const secret = found?.split(before)[1]?.split(/\s/)[0];
  return secret ? secret : null;
}
