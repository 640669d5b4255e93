import { Controller, Get, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { writeCsv } from '#kernel';
import { AllowEverybody } from '../../../platform/sign-in/signed-in.js';
import type { ItemSummary } from '../register.types.js';
import { DatesListQuery } from './dates-list.query.js';

type Words = string | string[] | undefined;

/** Lines of one page of the file: the whole register never stands in memory. */
const pageOf = 200;

const columns: readonly (readonly [heading: string, cell: (item: ItemSummary) => string | number | null])[] = [
  ['item', ({ id }) => id],
  ['state', ({ state }) => state],
  ['date', ({ dueState }) => dueState],
  ['last day of use', ({ dueOn }) => dueOn],
  ['kind', ({ kind }) => kind],
  ['model', ({ model }) => model],
  ['count', ({ count }) => count],
  ['depot', ({ depot }) => depot],
  ['place', ({ place }) => place],
];

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
    let next = await this.query.examined(pageOf, null, asked);
    response.setHeader('content-type', 'text/csv; charset=utf-8');
    response.setHeader('content-disposition', 'attachment; filename="due-list.csv"');
    response.write(writeCsv([columns.map(([heading]) => heading)]));
    for (;;) {
      const lines = next.edges.map(({ node }) => columns.map(([, cell]) => cell(node)));
      if (lines.length > 0) response.write(writeCsv(lines));
      if (!next.pageInfo.hasNextPage || response.destroyed) break;
      next = await this.query.examined(pageOf, next.pageInfo.endCursor, asked);
    }
    response.end();
  }
}

const one = (words: Words): string | null => (Array.isArray(words) ? words[0] : words)?.trim() || null;
