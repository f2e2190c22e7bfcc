import { toFileUrl } from "@std/path";
import { chromium, type Page } from "playwright-core";
import { installed } from "../notebook/_fixtures.ts";

/** Whether Debian's Chromium is there. */
export const hasChromium: boolean = installed("chromium");

/** Opens pages from disk in Chromium, and gathers what they complain of. */
export async function withPage(
  use: (open: (file: string) => Promise<Page>, complaints: readonly string[]) => Promise<void>,
): Promise<void> {
  const browser = await chromium.launch({
    executablePath: "/usr/bin/chromium",
    // Root, as in CI, has no sandbox; the pages are our own.
    args: ["--no-sandbox"],
  });
  try {
    const page = await browser.newPage();
    const complaints: string[] = [];
    page.on("console", (message) => void complaints.push(message.text()));
    page.on("pageerror", (error) => void complaints.push(error.message));
    page.on("requestfailed", (request) => void complaints.push(`no ${request.url()}`));
    await use(async (file) => {
      await page.goto(toFileUrl(file).href);
      return page;
    }, complaints);
  } finally {
    await browser.close();
  }
}
