import { Controller, Get } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { Open } from './sign-in/signed-in.js';

@Controller('healthz')
export class HealthController {
  constructor(private readonly dataSource: DataSource) {}

  @Open()
  @Get()
  async health(): Promise<{ status: string }> {
    await this.dataSource.query('SELECT 1');
    return { status: 'ok' };
  }
}
