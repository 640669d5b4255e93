/** A point of a drawing with the words beside it (pixels). */
export interface ToLabel {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** Where the words stand; a line leads from the point where they stand away from it. */
export interface PlacedLabel extends ToLabel {
  readonly labelX: number;
  readonly labelY: number;
  readonly isLed: boolean;
}

/** About what a letter of a label is wide, its line high, and the circle of a point in half. */
export const labelSize = { letter: 6.9, line: 14, point: 6 } as const;

interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What a label covers; its baseline is at `labelY`, its left edge at `labelX`. */
export const areaOf = ({ labelX, labelY, text }: PlacedLabel): Area => ({
  left: labelX,
  right: labelX + text.length * labelSize.letter,
  top: labelY - 11,
  bottom: labelY + 3,
});

const overlap = (a: Area, b: Area): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/**
 * Words beside every point so that none lies on another, on a point or on anything `taken`, and none leaves the width: beside it, else line by line
 * further away. What has no room above goes down, where the drawing grows.
 */
export function placeLabels(points: readonly ToLabel[], width: number, taken: readonly Area[] = []): readonly PlacedLabel[] {
  const used: Area[] = [
    ...taken,
    ...points.map(({ x, y }) => ({
      left: x - labelSize.point,
      right: x + labelSize.point,
      top: y - labelSize.point,
      bottom: y + labelSize.point,
    })),
  ];
  return points.map((point) => {
    const placed = candidates(point, width).find((each) => !used.some((area) => overlap(areaOf(each), area)));
    const found = placed ?? below(point, width, used);
    used.push(areaOf(found));
    return found;
  });
}

/** Beside the point on both sides, then up and down by whole lines. */
function candidates(point: ToLabel, width: number): readonly PlacedLabel[] {
  const wide = point.text.length * labelSize.letter;
  const away = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, 6, 7, 8];
  return away.flatMap((lines) =>
    [point.x + 9, point.x - 9 - wide]
      .filter((labelX) => labelX >= 2 && labelX + wide <= width - 2)
      .map((labelX) => ({ ...point, labelX, labelY: point.y + 4 + lines * labelSize.line, isLed: lines !== 0 }))
      .filter((each) => each.labelY > 12),
  );
}

/** Under everything that stands there. */
function below(point: ToLabel, width: number, used: readonly Area[]): PlacedLabel {
  const wide = point.text.length * labelSize.letter;
  const labelX = Math.max(2, Math.min(point.x + 9, width - 2 - wide));
  const deepest = Math.max(...used.map((each) => each.bottom), point.y);
  return { ...point, labelX, labelY: deepest + labelSize.line, isLed: true };
}
