import { afterEach, describe, expect, it, vi } from 'vitest';
import { clockAt, SYSTEM_CLOCK } from '../../src/app/system-clock.js';

describe('the clock', () => {
  afterEach(() => vi.useRealTimers());

  it('has the date of London at its instant, in summer an hour before UTC has it', () => {
    expect(clockAt('2026-06-30T23:30:00.000Z').today()).toBe('2026-07-01');
    expect(clockAt('2026-12-31T23:30:00.000Z').today()).toBe('2026-12-31');
  });

  it('moves to the next day at midnight in London, not at midnight UTC', () => {
    vi.useFakeTimers({ now: new Date('2026-06-30T22:59:59.999Z') });
    expect(SYSTEM_CLOCK.today()).toBe('2026-06-30');
    vi.setSystemTime(new Date('2026-06-30T23:00:00.000Z'));
    expect(SYSTEM_CLOCK.today()).toBe('2026-07-01');
    vi.setSystemTime(new Date('2026-07-01T00:00:00.000Z'));
    expect(SYSTEM_CLOCK.today()).toBe('2026-07-01');
  });
});
