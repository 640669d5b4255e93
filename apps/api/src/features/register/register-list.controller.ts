import { Controller, Get, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { AllowEverybody } from '../../platform/sign-in/signed-in.js';
import { pageOfCsv, sendListAsCsv } from './list-as-csv.js';
import { RegisterListQuery } from './register-list.query.js';

type Words = string | string[] | undefined;

/** The register as its screen shows it, filtered and sorted, as CSV. */
@Controller('api/csv/register')
export class RegisterListController {
  constructor(private readonly query: RegisterListQuery) {}

  @AllowEverybody()
  @Get()
  async export(@Query() asked: Readonly<Record<string, Words>>, @Res() response: Response): Promise<void> {
    const { serial } = asked;
    const serials = serial === undefined ? null : Array.isArray(serial) ? serial : [serial];
    const sort = one(asked.sort);
    const isDescending = sort?.startsWith('-') === true;
    const filter = {
      ...{ search: one(asked.search), kind: one(asked.kind), state: one(asked.state), model: one(asked.model), depot: one(asked.depot) },
      ...{ serials, sort: isDescending ? sort.slice(1) : sort, descending: isDescending },
    };
    await sendListAsCsv(response, 'register.csv', (after) => this.query.items({ ...filter, first: pageOfCsv, after }));
  }
}

const one = (words: Words): string | null => String((Array.isArray(words) ? words[0] : words) ?? '').trim() || null;
