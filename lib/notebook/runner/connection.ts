import { join } from "node:path";

/** Where a kernel listens, in the words of Jupyter's connection file. */
export interface Connection {
  /** Address of this machine. */
  readonly ip: string;
  /** Always tcp: the kernel offers no other. */
  readonly transport: "tcp";
  /** How messages are signed. */
  readonly signature_scheme: "hmac-sha256";
  /** The key they are signed with. */
  readonly key: string;
  /** Port for requests. */
  readonly shell_port: number;
  /** Port for outputs. */
  readonly iopub_port: number;
  /** Port for shutting down. */
  readonly control_port: number;
  /** Port for asking the user; not used. */
  readonly stdin_port: number;
  /** Port of the heartbeat; not used, since it beats on when the kernel is stuck. */
  readonly hb_port: number;
}

/** Five free ports and a fresh key, in a file that only this user can read. */
export async function writeConnection(): Promise<{ connection: Connection; folder: string }> {
  // All five are held open at once, so that no two are the same.
  const listeners = Array.from(
    { length: 5 },
    () => Deno.listen({ hostname: "127.0.0.1", port: 0 }),
  );
  const [shell, iopub, control, stdin, hb] = listeners.map((l) => (l.addr as Deno.NetAddr).port);
  for (const listener of listeners) listener.close();
  const connection: Connection = {
    ip: "127.0.0.1",
    transport: "tcp",
    signature_scheme: "hmac-sha256",
    key: crypto.randomUUID(),
    shell_port: shell!,
    iopub_port: iopub!,
    control_port: control!,
    stdin_port: stdin!,
    hb_port: hb!,
  };
  const folder = await Deno.makeTempDir({ prefix: "laminate-kernel-" });
  await Deno.writeTextFile(connectionFile(folder), JSON.stringify(connection), { mode: 0o600 });
  return { connection, folder };
}

/** The connection file in a kernel's folder. */
export function connectionFile(folder: string): string {
  return join(folder, "connection.json");
}
