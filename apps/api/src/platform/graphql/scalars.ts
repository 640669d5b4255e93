import { GraphQLScalarType, type ValueNode, valueFromASTUntyped } from 'graphql';

/** A JSON document whose TypeScript type stands in the libs; `described` names it. */
const json = (name: string, described: string): GraphQLScalarType =>
  new GraphQLScalarType({
    name,
    description: described,
    serialize: (value) => value,
    parseValue: (value) => value,
    parseLiteral: (node: ValueNode, variables) => valueFromASTUntyped(node, variables ?? undefined),
  });

export const PackPlanJson = json('PackPlanJson', 'The five results of a show: PackPlan of libs/pack-plan.');
export const CartsJson = json('CartsJson', 'Cart loads, box moves and floor of a plan: CartsResult of libs/pack-plan.');
export const PicksHeadJson = json('PicksHeadJson', 'What holds for all picks of a plan: PicksResult without its hangs.');
export const HangJson = json('HangJson', 'One hang of a plan with its picks: HangResult of libs/pack-plan.');
export const HardwareJson = json('HardwareJson', 'Hardware of a plan: HardwareResult of libs/pack-plan.');
export const TrucksHeadJson = json('TrucksHeadJson', 'What holds for all trucks of a plan: TruckResult without its trucks.');
export const TruckJson = json('TruckJson', 'One truck of a plan: TruckResultOne of libs/pack-plan.');
export const DueJson = json('DueJson', 'Dates of a plan: DueResult of libs/pack-plan.');
export const TourJson = json('TourJson', 'A tour with its shows and hangs: Tour of libs/tour-file.');
export const VenueJson = json('VenueJson', 'A venue: Venue of libs/tour-file.');
export const ItemJson = json('ItemJson', 'An item of the register: Item of libs/tour-file.');
export const ModelJson = json('ModelJson', 'A catalogue model or a rigging system: libs/tour-file.');
export const KitJson = json('KitJson', 'Catalogue, rigging systems and rules: parts of TourFile of libs/tour-file.');
export const WorkListJson = json('WorkListJson', 'What is left to do on the floor: WorkList of libs/pack-plan.');
export const BetweenShowsJson = json('BetweenShowsJson', 'What happens to the carts between two shows: BetweenShows of libs/pack-plan.');
export const WholeTourJson = json('WholeTourJson', 'Prep and all load-ins of a tour, planned together: WholeTour of libs/pack-plan.');
export const SeasonJson = json('SeasonJson', 'Visits of examiners over a season: SeasonAnswer of libs/inspection-calendar.');
export const SeenItemsJson = json('SeenItemsJson', 'What an examiner sees at a visit: a list of SeenItem of libs/inspection-calendar.');
export const AnyJson = json('AnyJson', 'A value as it was given.');
