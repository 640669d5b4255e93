import { Controller, Get, HttpException, Param, Res } from '@nestjs/common';
import type { Response } from 'express';
import { type CalendarEntry, writeCalendar } from '#inspection-calendar';
import { writeCsv } from '#kernel';
import { Open } from '../../../platform/sign-in/signed-in.js';
import { CalendarService } from './calendar.service.js';

/** Calendars by their secret address: whoever has it reads them, without signing in. */
@Open()
@Controller('api/calendar')
export class CalendarController {
  constructor(private readonly calendars: CalendarService) {}

  @Get(':token/examinations.ics')
  async calendar(@Param('token') token: string, @Res() response: Response): Promise<void> {
    const entries = await this.entriesOf(token);
    answer(response, 'text/calendar; charset=utf-8', writeCalendar('Cartwright: examinations', entries));
  }

  @Get(':token/examinations.csv')
  async csv(@Param('token') token: string, @Res() response: Response): Promise<void> {
    const entries = await this.entriesOf(token);
    const rows = entries.map((each) => [
      each.on,
      each.isCancelled ? 'cancelled' : 'stands',
      each.summary,
      each.place ?? '',
      each.description,
      each.uid,
      each.sequence,
    ]);
    const header = ['day', 'state', 'what', 'place', 'description', 'uid', 'sequence'];
    answer(response, 'text/csv; charset=utf-8; header=present', writeCsv([header, ...rows.map((row) => row.map(String))]));
  }

  private async entriesOf(token: string): Promise<readonly CalendarEntry[]> {
    const entries = /^[\w-]{43}$/.test(token) ? await this.calendars.entries(token) : undefined;
    if (!entries) throw new HttpException({ message: 'There is no calendar under this address. It may have been withdrawn.' }, 404);
    return entries;
  }
}

function answer(response: Response, type: string, text: string): void {
  response.setHeader('content-type', type);
  response.setHeader('cache-control', 'private, no-store');
  response.setHeader('x-robots-tag', 'noindex');
  response.send(text);
}
