import { describe, expect, it } from 'vitest';
import { readConfig } from '../../src/app/config.js';

describe('settings of the process', () => {
  it('have defaults that open the service to this machine only', () => {
    expect(readConfig({})).toEqual({
      databaseFile: 'var/tidemark.sqlite',
      host: '127.0.0.1',
      port: 4100,
      trustedProxies: [],
    });
  });

  it('are read from the environment', () => {
    const environment = { TIDEMARK_DB: '/srv/record.sqlite', TIDEMARK_HOST: '127.0.0.2', TIDEMARK_PORT: '0' };
    expect(readConfig(environment)).toEqual({
      databaseFile: '/srv/record.sqlite',
      host: '127.0.0.2',
      port: 0,
      trustedProxies: [],
    });
    const proxies = { TIDEMARK_TRUSTED_PROXIES: '127.0.0.1, 10.0.0.0/8,::1' };
    expect(readConfig(proxies).trustedProxies).toEqual(['127.0.0.1', '10.0.0.0/8', '::1']);
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
    ['TIDEMARK_TRUSTED_PROXIES', ''],
    ['TIDEMARK_TRUSTED_PROXIES', 'true'],
    ['TIDEMARK_TRUSTED_PROXIES', '0.0.0.0/0'],
    ['TIDEMARK_TRUSTED_PROXIES', '10.0.0.0/33'],
    ['TIDEMARK_TRUSTED_PROXIES', '127.0.0.1,'],
    ['TIDEMARK_TRUSTED_PROXIES', 'proxy.example'],
  ])('refuse %s="%s", by name', (name, value) => {
    expect(() => readConfig({ [name]: value })).toThrow(name);
  });
});
