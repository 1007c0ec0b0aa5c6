/** The cross section of a toe, upper half: a superellipse, for a toe is flatter on top than an ellipse. Unit: its half width. */

/** What is assumed of every toe's section. */
export interface ToeSection {
  /** Height of the upper half over half the width. */
  readonly flatness: number;
  /** Exponent n of |x|ⁿ + |z / flatness|ⁿ = 1; 2 is an ellipse, more is squarer. */
  readonly squareness: number;
}

/**
 * Height over the body's middle at a share of the half width.
 * @example sectionHeight({ flatness: 0.8, squareness: 2 }, 0.6) // 0.64
 */
export const sectionHeight = ({ flatness, squareness: n }: ToeSection, share: number): number =>
  flatness * Math.max(0, 1 - Math.abs(share) ** n) ** (1 / n);

/**
 * How steeply the section falls at a share of the half width: the derivative of its height.
 * @example sectionSlope({ flatness: 0.8, squareness: 2 }, 0.6) // -0.6
 */
export function sectionSlope({ flatness, squareness: n }: ToeSection, share: number): number {
  const at = Math.min(1, Math.abs(share));
  return -Math.sign(share) * flatness * at ** (n - 1) * (1 - at ** n) ** (1 / n - 1);
}

/**
 * How much wider a section looks under a lean, as a factor: the greatest of x + lean · z over the section.
 *
 * @param shape of the section
 * @param lean tangent of the angle between the line of sight and the card's normal, across the toe
 * Hölder's inequality: the dual norm of (1, flatness · lean).
 * @example sectionWidening({ flatness: 1, squareness: 2 }, 1) // 1.414
 */
export function sectionWidening({ flatness, squareness: n }: ToeSection, lean: number): number {
  const dual = n / (n - 1);
  return (1 + Math.abs(flatness * lean) ** dual) ** (1 / dual);
}

/**
 * Share of the half width at which the side that leans away turns out of sight.
 * @example sectionHorizon({ flatness: 1, squareness: 2 }, 1) // 0.707
 */
export function sectionHorizon({ flatness, squareness: n }: ToeSection, lean: number): number {
  return (1 + Math.abs(flatness * lean) ** (n / (n - 1))) ** (-1 / n);
}

const MOST_STEPS = 40;
/** A hundredth of a micrometre on a toe. */
const CLOSE_ENOUGH = 1e-6;

/**
 * The place on the section behind what a lens shows: solves share + lean · height(share) = seen.
 *
 * @param shape of the section
 * @param lean as above; positive where the positive side leans away
 * @param seen place in the picture, from the middle, in half widths
 * @returns −1…1, and not beyond the horizon: what is seen at the toe's edge lies there; −1 or 1 where the near side overhangs
 * @example sectionShareSeen({ flatness: 0.8, squareness: 2 }, 0, 0.5) // 0.5
 */
export function sectionShareSeen(shape: ToeSection, lean: number, seen: number): number {
  const side = lean < 0 ? -1 : 1;
  const horizon = sectionHorizon(shape, lean);
  const slant = Math.abs(lean);
  const wanted = side * seen;
  if (wanted >= horizon + slant * sectionHeight(shape, horizon)) return side * horizon;
  if (wanted <= -1) return -side;
  // What is shown rises with the share and bends down all the way to the horizon: after its first step Newton's way comes from the left.
  const { flatness, squareness: n } = shape;
  const within = (one: number): number => Math.max(-1 + CLOSE_ENOUGH, Math.min(horizon, one));
  let share = within(wanted - slant * sectionHeight(shape, within(wanted)));
  for (let i = 0; i < MOST_STEPS; i++) {
    // Height and slope together: two powers and not four, for this is asked a thousand times a photo.
    const left = 1 - Math.abs(share) ** n;
    const height = flatness * left ** (1 / n);
    const slope = share === 0 ? 0 : (-height * (1 - left)) / (share * left);
    const step = (wanted - share - slant * height) / (1 + slant * slope);
    share = within(share + step);
    if (Math.abs(step) < CLOSE_ENOUGH) break;
  }
  return side * share;
}

const ARC_STEPS = 1200;
const arcs = new WeakMap<ToeSection, Float64Array>();

/** Arc lengths at equal steps of the angle whose sine is the share: the curve is short and even in it. */
function arcTable(shape: ToeSection): Float64Array {
  const known = arcs.get(shape);
  if (known) return known;
  const table = new Float64Array(ARC_STEPS + 1);
  let [x, z] = [0, shape.flatness];
  for (let i = 1; i <= ARC_STEPS; i++) {
    const share = Math.sin((Math.PI / 2) * (i / ARC_STEPS));
    const height = sectionHeight(shape, share);
    table[i] = table[i - 1] + Math.hypot(share - x, height - z);
    [x, z] = [share, height];
  }
  arcs.set(shape, table);
  return table;
}

/**
 * Length along the skin from the middle of the section's top to a share of its half width, same sign, in half widths.
 *
 * @param shape of the section
 * @param share −1…1; farther out the skin goes straight down
 * @example sectionArc({ flatness: 1, squareness: 2 }, 0.5) // 0.5236, the arc sine
 */
export function sectionArc(shape: ToeSection, share: number): number {
  const table = arcTable(shape);
  const at = (Math.asin(Math.min(1, Math.abs(share))) / (Math.PI / 2)) * ARC_STEPS;
  const below = Math.min(ARC_STEPS - 1, Math.floor(at));
  const within = table[below] + (at - below) * (table[below + 1] - table[below]);
  return Math.sign(share) * (within + Math.max(0, Math.abs(share) - 1));
}
