import { Controller, Get, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { AllowEverybody } from '../../../platform/sign-in/signed-in.js';
import { pageOfCsv, sendListAsCsv } from '../list-as-csv.js';
import { DatesListQuery } from './dates-list.query.js';

type Words = string | string[] | undefined;

/** The due list as CSV (RFC 4180), chosen as its screen is. */
@Controller('api/csv/due')
export class DueListController {
  constructor(private readonly query: DatesListQuery) {}

  @AllowEverybody()
  @Get()
  async export(
    @Query('depot') depot: Words,
    @Query('tour') tour: Words,
    @Query('kind') kind: Words,
    @Query('days') days: Words,
    @Res() response: Response,
  ): Promise<void> {
    const ahead = one(days);
    const asked = { depot: one(depot), tour: one(tour), kind: one(kind), days: ahead === null ? null : Number(ahead) };
    await sendListAsCsv(response, 'due-list.csv', (after) => this.query.examined(pageOfCsv, after, asked));
  }
}

const one = (words: Words): string | null => (Array.isArray(words) ? words[0] : words)?.trim() || null;
