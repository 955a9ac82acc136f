/** Where a phone keeps pictures of exercises: the worker answers from there, the page fills it. */
export const PICTURES = "pictures";
export const PICTURE_PATH = "/api/v1/pictures/";

export function pictureAddress(hash: string): string {
  return PICTURE_PATH + hash;
}

/** All of them at once: they can be had again, and what was recorded cannot. */
export async function forgetPictures(): Promise<void> {
  if ("caches" in globalThis) await caches.delete(PICTURES);
}
