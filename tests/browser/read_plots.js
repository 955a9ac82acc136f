// What a plot shows, measured on the drawing against its own rules.
(root) => {
  const at = (element, name) => Number(element.getAttribute(name));
  const scaleOf = (svg) => {
    const rules = [...svg.querySelectorAll("line.rule")].map((line) => ({
      y: at(line, "y1"),
      value: Number(line.parentElement.querySelector("text").textContent.replace("−", "-")),
    }));
    const [low, high] = [rules[0], rules.at(-1)];
    return (y) => low.value + ((y - low.y) * (high.value - low.value)) / (high.y - low.y);
  };
  const barsOf = (svg, value) =>
    [...svg.querySelectorAll("g")]
      .filter((group) => !group.querySelector("line.rule"))
      .map((group) => ({
        parts: Object.fromEntries(
          [...group.querySelectorAll(".plot-bar")].map((bar) => [
            bar.getAttribute("class").split("look-")[1],
            value(at(bar, "y")) - value(at(bar, "y") + at(bar, "height")),
          ]),
        ),
        peaks: [...group.querySelectorAll(".plot-peak")].map((path) =>
          value(Number(path.getAttribute("d").match(/^M\S+ ([^h]+)h/)[1])),
        ),
        words: [...group.querySelectorAll("text.value")].map((text) => text.textContent),
      }));
  const pointsOf = (line, value) =>
    line
      .getAttribute("points")
      .split(" ")
      .filter(Boolean)
      .map((pair) => value(Number(pair.split(",")[1])));
  return [...root.querySelectorAll("svg[role=img]")].map((svg) => {
    const value = scaleOf(svg);
    return {
      label: svg.getAttribute("aria-label"),
      bars: barsOf(svg, value),
      lines: Object.fromEntries(
        [...svg.querySelectorAll("polyline")].map((line, place) => [
          `${line.getAttribute("class").replace("plot-line look-", "")} ${place}`,
          pointsOf(line, value),
        ]),
      ),
      dots: [...svg.querySelectorAll("circle.point")].map((dot) => value(at(dot, "cy"))),
    };
  });
};
