/** A load-velocity line as it is drawn and said. The server fitted it; here it is only shown. */
import type { VelocityLine, VelocitySeen } from "../answers";
import { figure } from "../block/wish-words";
import type { Series } from "../plots/line-plot";

/** Readings as dots, the line between the lightest and heaviest, and its way to the maximum. */
export function drawn({ points, line }: VelocitySeen): Series[] {
  const dots: Series = {
    name: "fastest repetition of a set",
    look: "dots",
    points: points.map((one) => ({ x: one.load_kg, y: one.velocity_m_s })),
  };
  if (!line) return [dots];
  const lightest = { x: line.lightest_kg, y: line.velocity_at_lightest_m_s };
  const heaviest = { x: line.heaviest_kg, y: line.velocity_at_heaviest_m_s };
  const maximum = { x: line.maximum_kg, y: line.minimal_velocity_m_s };
  return [
    { name: "straight line through them", look: "solid", points: [lightest, heaviest] },
    { name: "on to the maximum", look: "dashed", points: [heaviest, maximum] },
    dots,
  ];
}

/** "The line meets a maximum at 131.5 kg (90 % band 115–148 kg)." */
export function lineInWords(line: VelocityLine): string {
  const band = `${figure(Math.round(line.maximum_low_kg))}–${figure(Math.round(line.maximum_high_kg))} kg`;
  return `By this line the maximum is ${figure(line.maximum_kg)} kg (90 % band ${band}).`;
}
