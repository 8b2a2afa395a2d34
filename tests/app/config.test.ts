import { describe, expect, it } from 'vitest';
import { readConfig } from '../../src/app/config.js';

describe('settings of the process', () => {
  it('have defaults that open the service to this machine only', () => {
    expect(readConfig({})).toEqual({ databaseFile: 'var/tidemark.sqlite', host: '127.0.0.1', port: 4100 });
  });

  it('are read from the environment', () => {
    const environment = { TIDEMARK_DB: '/srv/record.sqlite', TIDEMARK_HOST: '127.0.0.2', TIDEMARK_PORT: '0' };
    expect(readConfig(environment)).toEqual({
      databaseFile: '/srv/record.sqlite',
      host: '127.0.0.2',
      port: 0,
    });
    expect(readConfig({ TIDEMARK_PORT: '65535' }).port).toBe(65_535);
  });

  it.each([
    // An empty port would be any, an empty host every address of the machine, an empty file a record in memory.
    ['TIDEMARK_PORT', ''],
    ['TIDEMARK_PORT', '-1'],
    ['TIDEMARK_PORT', '65536'],
    ['TIDEMARK_PORT', '80.5'],
    ['TIDEMARK_PORT', '0x50'],
    ['TIDEMARK_PORT', '1e3'],
    ['TIDEMARK_PORT', 'http'],
    ['TIDEMARK_HOST', ''],
    ['TIDEMARK_HOST', ' '],
    ['TIDEMARK_DB', ''],
    ['TIDEMARK_DB', ' '],
    ['TIDEMARK_DB', ':memory:'],
  ])('refuse %s="%s", by name', (name, value) => {
    expect(() => readConfig({ [name]: value })).toThrow(name);
  });
});
