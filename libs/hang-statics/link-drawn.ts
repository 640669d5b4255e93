import type { HangCase } from './hang-case.js';
import { type Body, type Point, bodiesAt, restingTiltDeg, together } from './hang-geometry.js';
import { hinged } from './stage-cases.js';

/** A load that swings on the front pins of its joint because the rear link was drawn while it carried. */
export interface LinkDrawn {
  /** The load hanging free on its front pins, each of its bodies as heavy as it pulls when it swings through. */
  readonly problem: HangCase;
  /** The same at rest. */
  readonly atRest: HangCase;
  /** From where it was held to where it hangs by itself. */
  readonly turnsDeg: number;
  /** How many times its weight the load pulls its joint down with. */
  readonly pullsTimes: number;
}

/**
 * The rear link of the joint above `position` drawn while the load below hangs on it: the load is let go at rest and swings about its front pins. At the lowest
 * point of its swing, by the balance of energy, I w² / 2 = m g d (1 - cos a); every body pulls with its weight and m w² times its depth below the pins. Its own
 * inertia beside that of its mass at its centre is left out and nothing is lost on the way, so that no swing pulls more (physical pendulum, any textbook of
 * mechanics). What the bodies of the load pull one another aside with is left out.
 */
export function linkDrawn(linked: HangCase, position: number): LinkDrawn {
  const atRest = hinged(linked, position);
  const held = loadOf(linked, position);
  const free = loadOf(atRest, position);
  const turns = Math.abs(angleOf(held) - angleOf(free));
  const squared = free.bodies.reduce(
    (sum, { massKg, cg }) => sum + massKg * ((cg.xMm - free.pivot.xMm) ** 2 + (cg.zMm - free.pivot.zMm) ** 2),
    0,
  );
  const depthMm = free.pivot.zMm - free.cg.zMm;
  // w² / g: for each millimetre of depth, how many times its weight a body pulls more.
  const perMm = squared === 0 ? 0 : (2 * free.massKg * depthMm * (1 - Math.cos(turns))) / squared;
  const more = free.bodies.map(({ massKg, cg }) => massKg * perMm * (free.pivot.zMm - cg.zMm));
  const pulling: HangCase = {
    ...linked,
    boxes: linked.boxes.map((box, index) => (index >= position - 1 ? { ...box, massKg: box.massKg + more[index - position + 1]! } : box)),
  };
  return {
    problem: hinged(pulling, position),
    atRest,
    turnsDeg: (turns * 180) / Math.PI,
    pullsTimes: 1 + perMm * depthMm,
  };
}

interface Load {
  readonly pivot: Point;
  readonly bodies: readonly Body[];
  readonly massKg: number;
  readonly cg: Point;
}

function loadOf(problem: HangCase, position: number): Load {
  const hole = problem.grid.holes.find((each) => each.hole === problem.picks[0]!.hole)!;
  const all = bodiesAt(problem, problem.tiltDownDeg ?? restingTiltDeg(problem, hole));
  const bodies = all.slice(position);
  return { pivot: all[position]!.pivot, bodies, ...together(bodies) };
}

/** Of the centre of a load from straight below its pins. */
const angleOf = ({ pivot, cg }: Load): number => Math.atan2(cg.xMm - pivot.xMm, pivot.zMm - cg.zMm);
