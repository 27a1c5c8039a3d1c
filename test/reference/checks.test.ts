import { describe, expect, test } from 'vitest';
import { checks } from '../../core/checks/checks.ts';
import { runCheck } from '../../core/checks/runCheck.ts';
import { checkStages } from '../../core/checks/types.ts';

describe.each(checkStages.filter((stage) => checks.some((check) => check.stage === stage)))('%s', (stage) => {
  const ours = checks.filter((check) => check.stage === stage && !check.slow);
  test.each(ours.map((check) => [check.id, check] as const))('%s', (_, check) => {
    const { pass, got, error, limit, fault } = runCheck(check);
    expect({ pass, got, error, limit, fault }).toMatchObject({ pass: true });
  });
});
