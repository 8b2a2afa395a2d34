import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const { databaseFile } = readConfig(process.env);
const { connection, applied } = await openRecord(databaseFile, SYSTEM_CLOCK);
console.log(
  applied.length === 0 ? `${databaseFile} is up to date.` : `${databaseFile}: applied ${applied.join(', ')}.`,
);
await connection.close();
