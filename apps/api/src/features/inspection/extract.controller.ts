import { Controller, Get, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import { writeCsv } from '#kernel';
import { type InspectedItem, extractRows } from '#records';
import { AllowEverybody } from '../../platform/sign-in/signed-in.js';
import { InspectionQuery } from './inspection.query.js';

type Words = string | string[] | undefined;

/** An extract of the register for an inspector, as CSV. */
@Controller('api/csv/extract')
export class ExtractController {
  constructor(private readonly query: InspectionQuery) {}

  @AllowEverybody()
  @Get()
  async extract(@Query('kind') kind: Words, @Query('depot') depot: Words, @Res() response: Response): Promise<void> {
    const items: InspectedItem[] = [];
    for (let after: string | null = null, more = true; more; ) {
      const page = await this.query.items({ kinds: listOf(kind), depots: listOf(depot), after });
      items.push(...page.items);
      after = page.items.at(-1)?.id ?? null;
      more = page.hasMore;
    }
    response.setHeader('content-type', 'text/csv; charset=utf-8');
    response.setHeader('content-disposition', 'attachment; filename="register-extract.csv"');
    response.send(writeCsv(extractRows(items)));
  }
}

const listOf = (words: Words): string[] =>
  (Array.isArray(words) ? words : words === undefined ? [] : [words]).map(String).filter((each) => each !== '');
