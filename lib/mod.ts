export * from "./check/mod.ts";
