import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Server, type Socket } from 'socket.io';
import { SOCKET_PATH, type Command, type Reply } from '../../../server/protocol/messages.ts';

/** A room that answers as a test says: real sockets, no rules. `pages` answers whatever else is asked for. */
export async function roomServer(room = 'WAKUR', pages?: RequestListener) {
  const http = createServer(pages);
  const io = new Server(http, {
    path: `${SOCKET_PATH}${room}/`,
    allowRequest: (_request, decide) => decide(null, desk.reachable),
  });
  const commands: Command[] = [];
  const desk = {
    /** Answers a command; undefined leaves it unacknowledged. */
    reply: (_command: Command): Reply | undefined => ({ ok: true }),
    /** Whether a check is acknowledged. */
    alive: true,
    /** What a page hears on connecting. */
    greet: (_socket: Socket): void => undefined,
    connections: 0,
    /** Checks that came. */
    checks: 0,
    /** False: no line comes through. */
    reachable: true,
  };
  io.on('connection', (socket) => {
    desk.connections += 1;
    desk.greet(socket);
    socket.on('check', (acknowledge: () => void) => {
      desk.checks += 1;
      if (desk.alive) acknowledge();
    });
    socket.on('command', (command: Command, acknowledge: (reply: Reply) => void) => {
      commands.push(command);
      const reply = desk.reply(command);
      if (reply) acknowledge(reply);
    });
  });
  await new Promise<void>((resolve) => http.listen(0, '127.0.0.1', resolve));
  return {
    io,
    commands,
    desk,
    url: `http://127.0.0.1:${(http.address() as AddressInfo).port}`,
    /** Cuts every line without a word, as a network does. */
    drop: () => {
      for (const socket of io.sockets.sockets.values()) socket.conn.close();
    },
    close: () => io.close(),
  };
}

export type RoomServer = Awaited<ReturnType<typeof roomServer>>;
