import { Controller, Get, HttpCode, HttpException, Post, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { ok, writeCsv } from '#kernel';
import type { CsvFault } from '#tour-file';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { LotReader } from '../register/lots/lot.reader.js';
import { LotWriter } from '../register/lots/lot.writer.js';
import { readCsvFile } from './csv-file.js';

const heading = ['batch', 'pieces', 'state', 'reason'] as const;
const mostRows = 1000;

/** Pieces taken out of batches, a line each, all or none; and every split on file. */
@Controller('api/csv/lots')
export class LotCsvController {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly writer: LotWriter,
    private readonly reader: LotReader,
  ) {}

  @AllowEverybody()
  @Get()
  async export(@Res() response: Response): Promise<void> {
    const splits = await this.reader.splits(null);
    response.setHeader('content-type', 'text/csv; charset=utf-8');
    response.setHeader('content-disposition', 'attachment; filename="lots.csv"');
    response.send(
      writeCsv([
        [...heading, 'new batch', 'of pieces', 'by', 'at'],
        ...splits.map((each) => [
          each.parentId,
          each.pieces,
          each.state,
          each.reason,
          each.childId,
          each.ofPieces,
          each.madeBy,
          each.madeAt,
        ]),
      ]),
    );
  }

  @AllowEverybody()
  @Post()
  @HttpCode(200)
  async import(@Req() request: Request, @Me() me: SignedIn): Promise<{ taken: string[] }> {
    const rows = rowsOf(request);
    const outcome = await this.unitOfWork.run<string[]>(async (manager) => {
      const taken: string[] = [];
      for (const [index, [itemId = '', pieces = '', state = '', reason = '']] of rows.entries())
        taken.push(
          (
            await this.writer
              .split(manager, { itemId, pieces: Number(pieces || Number.NaN), state, reason, examination: null }, me)
              .catch((fault: unknown) => refused(faultsOf(fault, index + 2, itemId)))
          ).taken,
        );
      return ok(taken);
    });
    if (!outcome.ok) throw new Error('a split is never refused');
    return { taken: outcome.value };
  }
}

function rowsOf(request: Request): string[][] {
  if (!Buffer.isBuffer(request.body))
    throw new HttpException(
      { message: 'Nothing was imported.', faults: [{ row: 1, column: '', value: '', wanted: 'a CSV file, sent as text/csv' }] },
      415,
    );
  const records = readCsvFile(request.body, mostRows);
  if (!Array.isArray(records)) return refused([records]);
  const [first = [], ...rows] = records;
  const said = first.map((each) => each.trim().toLowerCase());
  if (heading.some((each, index) => said[index] !== each))
    return refused([{ row: 1, column: '', value: first.join(', ').slice(0, 80), wanted: `the heading ${heading.join(', ')}` }]);
  if (rows.length === 0 || rows.length > mostRows)
    return refused([{ row: 2, column: '', value: `${rows.length} rows`, wanted: `1 to ${mostRows} rows` }]);
  return rows.map((row) => row.map((cell) => cell.trim()));
}

function refused(faults: readonly CsvFault[]): never {
  throw new HttpException({ message: 'Nothing was imported.', faults }, 422);
}

function faultsOf(fault: unknown, row: number, itemId: string): readonly CsvFault[] {
  if (fault instanceof NotFoundError) return [{ row, column: 'batch', value: itemId.slice(0, 80), wanted: 'a batch on file' }];
  if (!(fault instanceof BadInputError)) throw fault;
  return fault.faults.map(({ field, value, wanted }) => ({
    row,
    column: field === 'itemId' ? 'batch' : field,
    value: String(value),
    wanted,
  }));
}
