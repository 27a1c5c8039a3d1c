/** One act after another on the same thing, whatever became of the one before. */

/** Runs acts with the same key one after another, in the order they were asked for. */
export type InTurn = <T>(key: string, act: () => Promise<T>) => Promise<T>;

/** Queues by key, all empty. */
export function createInTurn(): InTurn {
  const last = new Map<string, Promise<unknown>>();
  return <T>(key: string, act: () => Promise<T>): Promise<T> => {
    const turn = (last.get(key) ?? Promise.resolve()).then(act, act);
    const done = turn.catch(() => undefined).finally(() => last.get(key) === done && last.delete(key));
    last.set(key, done);
    return turn;
  };
}
