/* What is wrong with the phone's screen as it is drawn: asked by looks.py, answered in words. */
({ inSet }) => {
  const LEAST_CONTRAST = inSet ? 7 : 4.5;
  const LEAST_TARGET = 48;
  const BETWEEN_SETS = 64;
  const HALF = 0.5;

  const shown = [...document.querySelectorAll("body *")].filter((each) => {
    const { visibility, opacity } = getComputedStyle(each);
    const { width, height } = each.getBoundingClientRect();
    return width > 0 && height > 0 && visibility !== "hidden" && opacity !== "0" && each.checkVisibility();
  });

  const named = (each) => {
    const words = (each.getAttribute("aria-label") ?? each.textContent).trim().slice(0, 40);
    return `${each.tagName.toLowerCase()}.${each.getAttribute("class") ?? ""} “${words}”`;
  };
  const ownText = (each) =>
    [...each.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.data.trim() !== "");
  const forEyes = (each) => !each.closest(".sr-only, svg");

  function overflow() {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    const far = shown.filter((each) => each.getBoundingClientRect().right > clientWidth + HALF);
    return [`${scrollWidth - clientWidth} px too wide, by ${far.slice(0, 2).map(named).join(", ")}`];
  }

  function cut() {
    return shown
      .filter((each) => ownText(each) && forEyes(each) && getComputedStyle(each).overflowX !== "visible")
      .filter((each) => each.scrollWidth > each.clientWidth)
      .map((each) => `text cut: ${named(each)}`);
  }

  /** Text that reaches beyond its own box, over what stands beside it. */
  function spilt() {
    const range = document.createRange();
    return shown
      .filter((each) => ownText(each) && forEyes(each) && getComputedStyle(each).display !== "inline")
      .filter((each) => {
        range.selectNodeContents(each);
        const text = range.getBoundingClientRect();
        const box = each.getBoundingClientRect();
        return text.left < box.left - 1 || text.right > box.right + 1;
      })
      .map((each) => `text spilt: ${named(each)}`);
  }

  function small() {
    const targets = shown.filter((each) => each.matches("button, summary, a[href], input, textarea"));
    return targets.flatMap((each) => {
      const { width, height } = each.getBoundingClientRect();
      const between =
        each.matches(".wrap-tight button") ||
        (inSet && each.matches(".main, .record, .stepper button"));
      const least = between ? BETWEEN_SETS : LEAST_TARGET;
      const enough = height >= least - HALF && width >= LEAST_TARGET - HALF;
      return enough ? [] : [`target ${Math.round(width)} × ${Math.round(height)}: ${named(each)}`];
    });
  }

  const channels = (colour) => {
    const [red, green, blue, alpha = 1] = colour.match(/[\d.]+/g).map(Number);
    return { rgb: [red, green, blue], alpha };
  };
  const over = (above, below) =>
    above.rgb.map((value, at) => value * above.alpha + below[at] * (1 - above.alpha));

  /** What stands behind an element, through everything that lets it shine. */
  function ground(each) {
    if (!each) return [255, 255, 255];
    const here = channels(getComputedStyle(each).backgroundColor);
    return here.alpha === 1 ? here.rgb : over(here, ground(each.parentElement));
  }

  /** Relative luminance and contrast as in WCAG 2.2. */
  function luminance(rgb) {
    const [red, green, blue] = rgb.map((value) => {
      const share = value / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  }
  function contrast(each) {
    const behind = ground(each);
    const [low, high] = [over(channels(getComputedStyle(each).color), behind), behind]
      .map(luminance)
      .sort((one, other) => one - other);
    return (high + 0.05) / (low + 0.05);
  }

  function faint() {
    return shown
      .filter((each) => ownText(each) && forEyes(each) && !each.closest(":disabled"))
      .filter((each) => contrast(each) < LEAST_CONTRAST)
      .map((each) => `contrast ${contrast(each).toFixed(1)}: ${named(each)}`);
  }

  /** What ends a set is under the thumb without scrolling. */
  function away() {
    return shown
      .filter((each) => inSet && each.matches(".record"))
      .filter((each) => each.getBoundingClientRect().bottom > innerHeight + HALF)
      .map((each) => `below the window: ${named(each)}`);
  }

  return [...away(), ...overflow(), ...cut(), ...spilt(), ...small(), ...faint()];
}
