/** Version of the core's models; part of every prediction so that results can be traced. */
export const coreVersion = '0.1.0';
