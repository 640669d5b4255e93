import { createServer } from 'node:http';
import express from 'express';
import { Logger } from '@nestjs/common';
import { Trouble } from '#runtime';
import { createApp } from '../../api/src/create-app.js';
import { JobRunner } from '../../api/src/planning/jobs/job-runner.js';
import { readServerSettings } from '../../api/src/platform/config/config.js';
import { probes } from '../../api/src/platform/probes.js';
import { prepareDatabase } from '../../api/src/prepare-database.js';

/** Takes jobs from the table until it is told to stop; as many copies as the house likes. */
// Started by another program of the house: it ends with that one, however and whenever that one ends; before it is up there is nothing to close.
let isUp = false;
const leave = (): void => {
  if (!isUp) process.exit(0);
  // What does not end by itself, for want of a database, is not waited for.
  setTimeout(() => process.exit(1), 10_000).unref();
  process.kill(process.pid, 'SIGTERM');
};
process.once('disconnect', leave);
// It may have ended while this program was being loaded: nobody heard it then.
if (process.connected === false) leave();
try {
  const settings = readServerSettings(process.env);
  const { applicationUrl, warnings } = await prepareDatabase(settings, (sentence) => void process.stderr.write(`${sentence}\n`));
  const app = await createApp({ config: { ...settings, databaseUrl: applicationUrl, webFolder: null } });
  app.enableShutdownHooks();
  await app.init();
  const logger = new Logger('start');
  for (const warning of [...settings.warnings, ...warnings]) logger.warn(warning);
  app.get(JobRunner).start();
  if (settings.workerPort !== null)
    createServer(express().use(probes(app)))
      .listen(settings.workerPort)
      .unref();
  logger.log('Waiting for work.');
  isUp = true;
  process.channel?.unref();
} catch (fault) {
  process.stderr.write(`${fault instanceof Trouble ? fault.message : ((fault as Error).stack ?? String(fault))}\n`);
  process.exit(1);
}
