import { Controller, Get, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { writeCsv } from '#kernel';
import { Allow } from '../../platform/sign-in/signed-in.js';
import { LogQuery } from './log.query.js';
import type { LogLine } from './log.types.js';

/** Lines of one page of the file: the whole log never stands in memory. */
const pageOf = 200;

const columns: readonly (readonly [heading: string, cell: (line: LogLine) => string | null])[] = [
  ['line', ({ id }) => id],
  ['at', ({ at }) => at],
  ['done at', ({ doneAt }) => doneAt],
  ['who', ({ who }) => who],
  ['person', ({ personId }) => personId],
  ['by way of', ({ via }) => via],
  ['what', ({ sentence }) => sentence],
  ['item', ({ itemId }) => itemId],
  ['tour', ({ tourId }) => tourId],
  ['show', ({ showId }) => showId],
  ['changed', ({ rows }) => (rows.length === 0 ? '' : JSON.stringify(rows))],
  ['more rows', ({ moreRows }) => String(moreRows)],
];

/** The log as CSV (RFC 4180), filtered as its screen is. */
@Controller('api/csv/log')
export class LogController {
  constructor(private readonly query: LogQuery) {}

  @Allow('safety', 'system')
  @Get()
  async export(
    @Query('item') item: string | undefined,
    @Query('tour') tour: string | undefined,
    @Query('person') person: string | undefined,
    @Query('day') day: string | undefined,
    @Query('zone') zone: string | undefined,
    @Res() response: Response,
  ): Promise<void> {
    const filter = { item, tour, person, day, zone };
    let next = await this.query.lines(filter, pageOf);
    response.setHeader('content-type', 'text/csv; charset=utf-8');
    response.setHeader('content-disposition', 'attachment; filename="log.csv"');
    response.write(writeCsv([columns.map(([heading]) => heading)]));
    for (;;) {
      const lines = next.edges.map(({ node }) => columns.map(([, cell]) => cell(node) ?? ''));
      if (lines.length > 0) response.write(writeCsv(lines));
      if (!next.pageInfo.hasNextPage || response.destroyed) break;
      next = await this.query.lines(filter, pageOf, next.pageInfo.endCursor);
    }
    response.end();
  }
}
