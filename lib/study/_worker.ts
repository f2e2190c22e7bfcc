/** A worker of `computeInWorkers`: loads a function by its module and answers batches. */
interface Scope {
  onmessage: ((event: MessageEvent) => void) | null;
  postMessage(message: unknown): void;
}

const scope = globalThis as unknown as Scope;

scope.onmessage = async ({ data }: MessageEvent): Promise<void> => {
  const { module, name, inputs } = data as {
    readonly module: string;
    readonly name: string;
    readonly inputs: readonly unknown[];
  };
  const answer = await answerer(module, name);
  scope.postMessage(await Promise.all(inputs.map(answer)));
};

async function answerer(
  module: string,
  name: string,
): Promise<(input: unknown) => Promise<unknown>> {
  let found: unknown;
  let trouble = `${name} is not a function of ${module}`;
  try {
    found = (await import(module))[name];
  } catch (error) {
    trouble = `${module} cannot be loaded: ${String(error)}`;
  }
  return async (input) => {
    if (typeof found !== "function") return { ok: false, message: trouble };
    try {
      const result: unknown = await found(input);
      return typeof result === "number" && !Number.isFinite(result)
        ? { ok: false, message: `the result is ${result}` }
        : { ok: true, result };
    } catch (error) {
      return { ok: false, message: error instanceof Error ? error.message : String(error) };
    }
  };
}
