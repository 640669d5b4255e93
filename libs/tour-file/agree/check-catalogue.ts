import { quantities } from '#kernel';
import type { Catalogue, Kit, PinUse } from '../shapes/index.js';
import { axlePlaceFaults } from './check-axles.js';
import type { FaultList } from './fault-list.js';

/** Axles that share a load by their levers. */
const leastApartMm = quantities.wheelbaseMm.least;

/** Names given once, references that lead somewhere, figures that agree with one another. */
export function checkCatalogue(file: Kit, faults: FaultList): void {
  const { catalogue } = file;
  for (const [kind, models] of Object.entries(catalogue) as [keyof Catalogue, { model: string }[]][]) {
    const seen = new Set<string>();
    models.forEach((each, index) => faults.twice(`catalogue.${kind}[${index}].model`, each.model, seen, 'each model'));
  }
  const systems = new Set<string>();
  file.systems.forEach((each, index) => faults.twice(`systems[${index}].id`, each.id, systems, 'each rigging system'));
  const pins = new Set(catalogue.pins.map((each) => each.model));
  const boxes = new Set(catalogue.boxes.map((each) => each.model));

  const checkPins = (field: string, uses: readonly PinUse[]) =>
    uses.forEach((use, index) => faults.unknown(`${field}.pins[${index}].pin`, use.pin, pins, 'a pin model'));

  catalogue.boxes.forEach((box, index) => {
    const field = `catalogue.boxes[${index}]`;
    faults.unknown(`${field}.system`, box.system, systems, 'a rigging system');
    checkPins(field, box.pins);
    box.mayShareCartWith?.forEach((other, at) => faults.unknown(`${field}.mayShareCartWith[${at}]`, other, boxes, 'a box model'));
    if (box.rearHeightMm > box.frontHeightMm)
      faults.add(`${field}.rearHeightMm`, box.rearHeightMm, `at most the front height, ${box.frontHeightMm}`);
  });
  catalogue.grids.forEach((grid, index) => {
    const field = `catalogue.grids[${index}]`;
    faults.unknown(`${field}.system`, grid.system, systems, 'a rigging system');
    checkPins(field, grid.pins);
    const holes = new Set<string>();
    grid.holes.forEach((each, at) => faults.twice(`${field}.holes[${at}].hole`, each.hole, holes, 'each hole'));
  });
  checkHoists(catalogue, faults);
  catalogue.slings.forEach(({ lengthMm, shortestMm }, index) => {
    if (shortestMm !== undefined && shortestMm > lengthMm)
      faults.add(`catalogue.slings[${index}].shortestMm`, shortestMm, `at most the length, ${lengthMm} mm`);
  });
  catalogue.carts.forEach((cart, index) => {
    const field = `catalogue.carts[${index}]`;
    cart.carries?.forEach((model, at) => faults.unknown(`${field}.carries[${at}]`, model, boxes, 'a box model'));
    if (cart.heightsMm.length !== cart.capacity + 1)
      faults.add(
        `${field}.heightsMm`,
        `a list of ${cart.heightsMm.length}`,
        `${cart.capacity + 1} heights: for no box, one box, up to ${cart.capacity}`,
      );
    if (cart.basePins) faults.unknown(`${field}.basePins.pin`, cart.basePins.pin, pins, 'a pin model');
  });
  checkTrucks(catalogue, faults);
  catalogue.frames.forEach((frame, index) => {
    faults.unknown(`catalogue.frames[${index}].system`, frame.system, systems, 'a rigging system');
    checkPins(`catalogue.frames[${index}]`, frame.pins);
  });
  checkControl(file, faults);
}

/** What goes with hoists, controllers and rigging systems is on file as what it is named for. */
function checkControl({ catalogue, systems }: Kit, faults: FaultList): void {
  const ofPart = (models: readonly { readonly model: string; readonly part: string }[], part: string) =>
    new Set(models.filter((each) => each.part === part).map((each) => each.model));
  const wanted = {
    motorCable: [ofPart(catalogue.controls, 'motor cable'), 'a control model whose part is motor cable'],
    chainBag: [ofPart(catalogue.aids, 'chain bag'), 'an aid model whose part is chain bag'],
    cell: [new Set(catalogue.cells.map((each) => each.model)), 'a cell model'],
    controller: [ofPart(catalogue.controls, 'controller'), 'a control model whose part is controller'],
  } as const;
  catalogue.hoists.forEach((hoist, index) => {
    for (const [part, [known, what]] of Object.entries(wanted) as [keyof typeof wanted, (typeof wanted)[keyof typeof wanted]][]) {
      const model = hoist[part];
      if (model !== undefined) faults.unknown(`catalogue.hoists[${index}].${part}`, model, known, what);
    }
  });
  const beside = new Set(catalogue.controls.filter((each) => each.part !== 'controller').map((each) => each.model));
  catalogue.controls.forEach(({ part, hoists, with: along }, index) => {
    const field = `catalogue.controls[${index}]`;
    if (part === 'controller' && hoists === undefined) faults.add(`${field}.hoists`, null, 'how many hoists it runs');
    if (part !== 'controller' && hoists !== undefined) faults.add(`${field}.hoists`, hoists, 'nothing, unless it is a controller');
    if (part !== 'controller' && along !== undefined)
      faults.add(`${field}.with`, `a list of ${along.length}`, 'nothing, unless it is a controller');
    along?.forEach(({ model }, at) => faults.unknown(`${field}.with[${at}].model`, model, beside, 'a control model that is no controller'));
  });
  const frames = new Set(catalogue.frames.map((each) => each.model));
  const lines = ofPart(catalogue.aids, 'tag line');
  systems.forEach(({ adapters, tagLines }, index) => {
    adapters?.forEach(({ model }, at) => {
      if (model !== undefined) faults.unknown(`systems[${index}].adapters[${at}].model`, model, frames, 'a frame model');
    });
    tagLines?.forEach((model, at) =>
      faults.unknown(`systems[${index}].tagLines[${at}]`, model, lines, 'an aid model whose part is tag line'),
    );
  });
}

/** What a rated load is for is on file with it. */
function checkHoists(catalogue: Catalogue, faults: FaultList): void {
  catalogue.hoists.forEach(({ ratedFor, ratedForUseCase, hoistClass }, index) => {
    const field = `catalogue.hoists[${index}]`;
    if (ratedFor === 'class' && hoistClass === undefined) faults.add(`${field}.hoistClass`, null, 'the class that its rated load is for');
    if (ratedFor === 'use case' && ratedForUseCase === undefined)
      faults.add(`${field}.ratedForUseCase`, null, 'the use case that its rated load is for');
    if (ratedFor !== 'use case' && ratedForUseCase !== undefined)
      faults.add(`${field}.ratedForUseCase`, ratedForUseCase, 'nothing, unless the rated load is for a use case');
  });
}

/** Axles are a truck's; limits of a metre and of the centre along are of what is stowed without rows. */
function checkKind(truck: Catalogue['trucks'][number], field: string, faults: FaultList): void {
  const { kind = 'truck' } = truck;
  if (kind !== 'truck') {
    for (const gear of ['semiTrailer', 'rigid', 'axles'] as const)
      if (truck[gear] !== undefined)
        faults.add(`${field}.${gear}`, 'axles', `nothing: ${kind === 'sea container' ? 'a sea container' : 'an air pallet'} has none`);
    return;
  }
  for (const limit of ['maxEndOffsetMm', 'maxKgPerMetre'] as const)
    if (truck[limit] !== undefined)
      faults.add(`${field}.${limit}`, truck[limit], 'nothing, unless its kind is sea container or air pallet');
}

/** One way of carrying, axles far enough apart. */
function checkTrucks(catalogue: Catalogue, faults: FaultList): void {
  catalogue.trucks.forEach((truck, index) => {
    const field = `catalogue.trucks[${index}]`;
    if (truck.semiTrailer && truck.rigid) faults.add(`${field}.rigid`, 'an object', 'either semiTrailer or rigid, not both');
    if (truck.semiTrailer && truck.semiTrailer.axleGroupXMm - truck.semiTrailer.kingpinXMm < leastApartMm)
      faults.add(
        `${field}.semiTrailer.axleGroupXMm`,
        truck.semiTrailer.axleGroupXMm,
        `at least ${leastApartMm} mm behind the kingpin at ${truck.semiTrailer.kingpinXMm}`,
      );
    if (truck.rigid && truck.rigid.rearAxleXMm - truck.rigid.frontAxleXMm < leastApartMm)
      faults.add(
        `${field}.rigid.rearAxleXMm`,
        truck.rigid.rearAxleXMm,
        `at least ${leastApartMm} mm behind the front axle at ${truck.rigid.frontAxleXMm}`,
      );
    for (const fault of axlePlaceFaults(truck)) faults.add(`${field}.${fault.field}`, fault.value, fault.wanted);
    checkKind(truck, field, faults);
  });
}
