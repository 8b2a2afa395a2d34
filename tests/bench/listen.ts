import type { FastifyInstance } from 'fastify';

/**
 * Listens on a free port of 127.0.0.1, tells the parent process which, and closes when the parent hangs up. Asked by any
 * message, it tells how much processor time this process has used, in milliseconds.
 *
 * @param release what else is to be closed at the end
 */
export async function listenForParent(
  app: Pick<FastifyInstance, 'listen' | 'close'>,
  release: () => Promise<void> | void,
): Promise<void> {
  process.once('disconnect', () => {
    void app
      .close()
      .then(release)
      .then(() => process.exit(0));
  });
  process.on('message', () => {
    const { user, system } = process.cpuUsage();
    process.send?.((user + system) / 1000);
  });
  const address = await app.listen({ host: '127.0.0.1', port: 0 });
  process.send?.(new URL(address).port);
}
