import { createServer } from 'node:http';
import express from 'express';
import { Logger } from '@nestjs/common';
import { Trouble } from '#runtime';
import { createApp } from '../../api/src/create-app.js';
import { migrate } from '../../api/src/data-source.js';
import { JobRunner } from '../../api/src/planning/jobs/job-runner.js';
import { readServerSettings } from '../../api/src/platform/config/config.js';
import { probes } from '../../api/src/platform/probes.js';

/** Takes jobs from the table until it is told to stop; as many copies as the house likes. */
try {
  const settings = readServerSettings(process.env);
  await migrate(settings.databaseUrl);
  const app = await createApp({ config: { ...settings, webFolder: null } });
  app.enableShutdownHooks();
  await app.init();
  const logger = new Logger('start');
  for (const warning of settings.warnings) logger.warn(warning);
  app.get(JobRunner).start();
  if (settings.workerPort !== null)
    createServer(express().use(probes(app)))
      .listen(settings.workerPort)
      .unref();
  logger.log('Waiting for work.');
} catch (fault) {
  process.stderr.write(`${fault instanceof Trouble ? fault.message : ((fault as Error).stack ?? String(fault))}\n`);
  process.exit(1);
}
