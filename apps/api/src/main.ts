import { Logger } from '@nestjs/common';
import { Trouble } from '#runtime';
import { createApp } from './create-app.js';
import { AccountService } from './features/account/account.service.js';
import { JobRunner } from './planning/jobs/job-runner.js';
import { readServerSettings } from './platform/config/config.js';
import { prepareDatabase } from './prepare-database.js';

/** The API for a house with a server of its own; migrates first. It plans as well, at a lower priority: workers beside it share the jobs. */
try {
  const settings = readServerSettings(process.env);
  const { applicationUrl, warnings } = await prepareDatabase(settings, (sentence) => void process.stderr.write(`${sentence}\n`));
  const app = await createApp({ config: { ...settings, databaseUrl: applicationUrl } });
  app.enableShutdownHooks();
  await app.init();
  const logger = new Logger('start');
  for (const warning of [...settings.warnings, ...warnings]) logger.warn(warning);
  const accounts = app.get(AccountService);
  const { firstPerson, firstOfficer } = settings;
  if (firstPerson && (await accounts.addFirst('system', firstPerson.email, firstPerson.password)))
    logger.log('The first person may sign in, and chooses a password of their own.');
  if (firstOfficer && (await accounts.addFirst('safety', firstOfficer.email, firstOfficer.password)))
    logger.log('The first safety officer may sign in, and chooses a password of their own.');
  app.get(JobRunner).start();
  await app.listen(settings.port, settings.host);
  logger.log(`Listening on ${settings.host}, port ${settings.port}.`);
} catch (fault) {
  process.stderr.write(`${fault instanceof Trouble ? fault.message : ((fault as Error).stack ?? String(fault))}\n`);
  process.exit(1);
}
