import type { ArgumentMetadata, PipeTransform } from '@nestjs/common';
import { BadInputError } from '../faults/fault.js';

const shape = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/** An argument that is an id of this house (RFC 9562), or left out where it may be; anything else is told by its name. */
export class UuidArgument implements PipeTransform<string | null | undefined, string | null | undefined> {
  transform(value: string | null | undefined, { data }: ArgumentMetadata): string | null | undefined {
    if (value === null || value === undefined || shape.test(value)) return value;
    throw new BadInputError([{ field: data ?? 'id', value: value.slice(0, 80), wanted: 'an id as this house gave it out' }]);
  }
}
