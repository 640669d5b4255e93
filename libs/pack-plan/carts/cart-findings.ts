import type { CartFinding, LoadSubject, QuoteSubject, ShowSubject } from '#trade';
import type { CartLoad, CartsResult } from '../contract/index.js';
import { type PlanInputs, shortDays } from '../inputs/index.js';

const quote = (text: string | null | undefined): QuoteSubject | null => (text ? { kind: 'quote', text } : null);
const loadOf = ({ id, name }: CartLoad): LoadSubject => ({ kind: 'cart load', id, name });

/** What the plan has to say of its carts: the moves and their proof, what is short and when, what is out of service and stands in a wanted cart. */
export function cartFindings(inputs: PlanInputs, carts: CartsResult): CartFinding[] {
  return [
    movesFinding(inputs, carts),
    ...mismatchFindings(inputs, carts),
    ...shortFindings(inputs),
    ...standingFindings(inputs, carts),
    ...exceptionFindings(carts),
  ];
}

function movesFinding({ show: { id, name, from } }: PlanInputs, carts: CartsResult): CartFinding {
  const show: ShowSubject = { kind: 'show', id, name };
  if (carts.status === 'infeasible')
    return { code: 'design-not-served', subjects: { show }, numbers: {}, date: from, shortages: carts.fact ?? [] };
  return {
    code: 'box-moves',
    subjects: { show },
    numbers: { moves: carts.boxMoves, bound: carts.bound },
    date: null,
    isProved: carts.status === 'optimal',
  };
}

/** What the checker of the box moves found is for whoever looks after the program; the crew is told not to use the plan. */
const mismatchFindings = ({ show: { id, name } }: PlanInputs, carts: CartsResult): CartFinding[] =>
  (carts.mismatch ?? []).slice(0, 1).map(({ code }) => ({
    code: 'box-moves-mismatch',
    subjects: { show: { kind: 'show', id, name }, found: { kind: 'quote', text: String(code) } },
    numbers: {},
    date: null,
  }));

const shortFindings = (inputs: PlanInputs): CartFinding[] =>
  shortDays(inputs).map(({ model, day, days, missing, show, keptBack }) => ({
    code: 'model-short',
    subjects: {
      model: { kind: 'model', id: model },
      show: { kind: 'show', ...show },
      boxes: keptBack.map((each) => ({ kind: 'item', id: each.box })),
    },
    numbers: { missing },
    date: day,
    isOwnShow: show.id === inputs.show.id,
    days,
    keptBack,
  }));

/** Boxes out of service that stand in a cart. */
function standingFindings(inputs: PlanInputs, carts: CartsResult): CartFinding[] {
  const planned = new Map(carts.loads.filter((each) => each.cart !== null).map((each) => [each.cart!, each]));
  return carts.floorBefore.carts.flatMap(({ cart, boxes }) =>
    boxes.flatMap((serial, index): CartFinding[] => {
      const item = inputs.items.get(serial)!;
      if (item.state === 'in service') return [];
      const load = planned.get(cart);
      return [
        {
          code: 'out-of-service-in-cart',
          subjects: {
            box: { kind: 'item', id: serial },
            slot: { kind: 'slot', cart, slot: index + 1 },
            load: load ? loadOf(load) : null,
            remark: quote(item.reason),
          },
          numbers: {},
          date: null,
          state: item.state,
        },
      ];
    }),
  );
}

const exceptionFindings = (carts: CartsResult): CartFinding[] =>
  carts.loads.flatMap((load) =>
    load.exceptions.flatMap(({ fact }): CartFinding[] =>
      fact === null
        ? []
        : [
            {
              code: 'cart-exception',
              subjects: { cart: load.cart === null ? loadOf(load) : { kind: 'cart', id: load.cart }, load: loadOf(load) },
              numbers: {},
              date: null,
              exception: fact,
            },
          ],
    ),
  );
