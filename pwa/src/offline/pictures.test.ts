// @vitest-environment node
import { beforeEach, describe, expect, test } from "vitest";

import { fakeCaches, type FakeCaches } from "../../tests/fakes/caches";
import type { PictureNews } from "../api/sync";
import { pictureAddress, PICTURES } from "./picture-cache";
import { bringOne, bringPictures, isHere, LEAST_ROOM_BYTES, type PictureParts } from "./pictures";

const SIZE = 100;

function picture(hash: string): PictureNews {
  return { hash, media: "image/webp", bytes: SIZE, words: `How ${hash} looks` };
}

const SQUAT = picture("squat");
const ROW = picture("row");
const PULL = picture("pull");

let asked: string[];

beforeEach(() => {
  asked = [];
});

function parts(more: Partial<PictureParts> = {}, caches: FakeCaches = fakeCaches()): PictureParts {
  return {
    caches,
    fetch(address) {
      asked.push(address);
      return Promise.resolve(ours());
    },
    saving: () => false,
    room: () => Promise.resolve(Infinity),
    ...more,
  };
}

function ours(status = 200): Response {
  return new Response("x".repeat(SIZE), { status, headers: { Undercroft: "1" } });
}

const ALWAYS = () => true;
const addresses = (...pictures: PictureNews[]) => pictures.map(({ hash }) => pictureAddress(hash));

describe("pictures of coming sessions", () => {
  test("are fetched once, in the order of the sessions", async () => {
    const caches = fakeCaches();
    const one = parts({}, caches);
    await expect(bringPictures(one, [SQUAT, ROW], [SQUAT, ROW], ALWAYS)).resolves.toBe("all");
    await bringPictures(one, [SQUAT, ROW], [SQUAT, ROW], ALWAYS);
    expect(asked).toStrictEqual(addresses(SQUAT, ROW));
    expect(caches.kept(PICTURES)).toStrictEqual(addresses(SQUAT, ROW));
    await expect(isHere(one, "squat")).resolves.toBe(true);
    await expect(isHere(one, "pull")).resolves.toBe(false);
  });

  test("are not asked for while the athlete saves data, save one that was tapped", async () => {
    const saving = parts({ saving: () => true });
    await expect(bringPictures(saving, [SQUAT], [SQUAT], ALWAYS)).resolves.toBe("some");
    expect(asked).toStrictEqual([]);
    await expect(bringOne(saving, SQUAT)).resolves.toBe(true);
    expect(asked).toStrictEqual(addresses(SQUAT));
  });

  test("wait as soon as there is something to be sent", async () => {
    const idle = () => asked.length === 0;
    await expect(bringPictures(parts(), [SQUAT, ROW], [SQUAT, ROW], idle)).resolves.toBe("some");
    expect(asked).toStrictEqual(addresses(SQUAT));
  });

  test("go from the phone when the coach shows them no more", async () => {
    const caches = fakeCaches();
    await bringPictures(parts({}, caches), [SQUAT, ROW], [SQUAT, ROW], ALWAYS);
    await bringPictures(parts({}, caches), [ROW], [ROW], ALWAYS);
    expect(caches.kept(PICTURES)).toStrictEqual(addresses(ROW));
  });

  test("stay when they belong to the programme and to no session that comes soon", async () => {
    const caches = fakeCaches();
    await bringPictures(parts({}, caches), [SQUAT], [SQUAT, ROW], ALWAYS);
    await bringPictures(parts({}, caches), [ROW], [SQUAT, ROW], ALWAYS);
    expect(caches.kept(PICTURES)).toStrictEqual(addresses(SQUAT, ROW));
  });

  test.each([
    ["no network", () => Promise.reject(new TypeError("offline"))],
    ["a captive portal", () => Promise.resolve(new Response("<html>Log in</html>"))],
    ["a refusal", () => Promise.resolve(ours(404))],
  ])("are tried again later after %s", async (_, fetch) => {
    const caches = fakeCaches();
    const one = parts({ fetch }, caches);
    await expect(bringPictures(one, [SQUAT], [SQUAT], ALWAYS)).resolves.toBe("some");
    expect(caches.kept(PICTURES)).toStrictEqual([]);
  });
});

describe("a phone that is nearly full", () => {
  test("asks for no pictures", async () => {
    const tight = parts({ room: () => Promise.resolve(LEAST_ROOM_BYTES - 1) });
    await expect(bringPictures(tight, [SQUAT], [SQUAT], ALWAYS)).resolves.toBe("full");
    expect(asked).toStrictEqual([]);
  });

  test("lets go of every picture where one more does not fit, and asks for no other", async () => {
    const caches = fakeCaches(2.5 * SIZE);
    const all = [SQUAT, ROW, PULL, picture("press")];
    await expect(bringPictures(parts({}, caches), all, all, ALWAYS)).resolves.toBe("full");
    expect(asked).toStrictEqual(addresses(SQUAT, ROW, PULL));
    expect(caches.kept(PICTURES)).toStrictEqual([]);
  });
});
