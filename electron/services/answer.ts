/** The gate in front of every call: known name, checked argument, faults turned into issues. */

import { fail, type Result } from '../../core/index.ts';
import { argumentChecks, type Channel, type HostApi } from '../contract.ts';

/** Calls `api` by name with an unchecked argument. Never throws. */
export async function answer<C extends Channel>(
  api: HostApi<C>,
  name: string,
  argument: unknown,
): Promise<Result<unknown>> {
  if (!Object.hasOwn(api, name)) return fail(unknownCall(name));
  const channel = name as C;
  try {
    // inside, since a list with more faults than the checks can carry ends them with an exception
    const checked = argumentChecks[channel].safeParse(argument);
    if (!checked.success) {
      const issue = checked.error.issues[0];
      return fail(badArgument(name, issue ? `${issue.path.join('.')}: ${issue.message}` : 'refused'));
    }
    const call = api[channel] as (argument: unknown) => Promise<Result<unknown>>;
    return await call(checked.data);
  } catch (error) {
    return fail(hostFault(name, error));
  }
}

const unknownCall = (name: string) => ({
  path: [],
  code: 'call-unknown',
  message: 'The host has no such call.',
  value: name.slice(0, 60),
  remedy: 'Start Augerwright again.',
});

const badArgument = (name: string, reason: string) => ({
  path: [],
  code: 'call-argument',
  message: `The host refused the argument of ${name}.`,
  value: reason.slice(0, 200),
  remedy: 'Report this as a fault of Augerwright.',
});

const hostFault = (name: string, error: unknown) => ({
  path: [],
  code: 'host-fault',
  message: `The host failed in ${name}.`,
  value: String(error).slice(0, 200),
  remedy: 'Save a copy of your work, then start Augerwright again.',
});
