import type { Output } from "./notebook_file.ts";
import type { Message } from "./wire.ts";

/**
 * The outputs that a cell's messages amount to, as the notebook format has them: pieces of one
 * stream are joined, a cleared output is gone, an updated display stands where it first stood.
 */
export function outputsOf(messages: readonly Message[]): Output[] {
  const outputs: Output[] = [];
  const places = new Map<unknown, number>();
  let clearNext = false;
  const add = (output: Output): void => {
    if (clearNext) outputs.length = 0;
    clearNext = false;
    const last = outputs.at(-1);
    if (
      output.output_type === "stream" && last?.output_type === "stream" &&
      last.name === output.name
    ) {
      outputs[outputs.length - 1] = { ...last, text: last.text + output.text };
    } else outputs.push(output);
  };
  for (const { header: { msg_type: type }, content } of messages) {
    const id = (content.transient as { display_id?: string } | undefined)?.display_id;
    if (type === "clear_output") {
      if (content.wait === true) clearNext = true;
      else outputs.length = 0;
    } else if (type === "update_display_data") {
      const place = places.get(id);
      const old = place === undefined ? undefined : outputs[place];
      if (place !== undefined && old?.output_type === "display_data") {
        outputs[place] = { ...old, data: content.data as Record<string, unknown> };
      }
    } else {
      const output = outputOf(type, content);
      if (output === undefined) continue;
      add(output);
      if (id !== undefined) places.set(id, outputs.length - 1);
    }
  }
  return outputs;
}

function outputOf(type: string, content: Message["content"]): Output | undefined {
  switch (type) {
    case "stream":
      return { output_type: type, name: String(content.name), text: String(content.text) };
    case "display_data":
      return {
        output_type: type,
        data: content.data as Record<string, unknown>,
        metadata: (content.metadata ?? {}) as Record<string, unknown>,
      };
    case "execute_result":
      return {
        output_type: type,
        data: content.data as Record<string, unknown>,
        metadata: (content.metadata ?? {}) as Record<string, unknown>,
        execution_count: content.execution_count as number,
      };
    case "error":
      // The kernel's trace holds this machine's paths and lines of transpiled code.
      return {
        output_type: type,
        ename: String(content.ename),
        evalue: String(content.evalue),
        traceback: [`${content.ename}: ${content.evalue}`],
      };
    default:
      return undefined;
  }
}
