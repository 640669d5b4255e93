import { type TourFile, wholeHangs } from '#tour-file';
import type { PackPlan } from '../contract/index.js';

/** The tour file with every place of a show pinned to the box that an earlier plan put there, but for `failed`: what changes least. */
export function keepBoxes(file: TourFile, plan: PackPlan, failed: ReadonlySet<string>): TourFile {
  const usable = new Map(
    file.items.filter((item) => item.kind === 'box' && item.state === 'in service').map((item) => [item.id, item.model]),
  );
  const serialAt = new Map(
    plan.carts.loads.flatMap((load) => load.boxes.map((box) => [`${load.hang}/${box.position}`, box.serial] as const)),
  );
  return {
    ...file,
    tour: {
      ...file.tour,
      shows: file.tour.shows.map((show) =>
        show.id !== plan.show.id
          ? show
          : {
              ...show,
              // A mirrored hang becomes one of its own here: its boxes are others than those of the hang that it mirrors.
              hangs: wholeHangs(show).map(({ mirrorOf: _mirrorOf, ...hang }) => ({
                ...hang,
                boxes: hang.boxes.map(({ model, splayDeg, serial: wanted }, index) => {
                  if (wanted !== undefined) return { model, splayDeg, serial: wanted };
                  const serial = serialAt.get(`${hang.id}/${index + 1}`);
                  return serial && usable.get(serial) === model && !failed.has(serial) ? { model, splayDeg, serial } : { model, splayDeg };
                }),
              })),
            },
      ),
    },
  };
}
