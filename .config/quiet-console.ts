import { afterEach, beforeEach, expect, vi } from 'vitest';

const METHODS = ['debug', 'error', 'info', 'log', 'trace', 'warn'] as const;

let written: string[] = [];

// A test that expects output mocks the method itself; what still arrives here was not expected.
beforeEach(() => {
  written = [];
  for (const method of METHODS)
    vi.spyOn(console, method).mockImplementation((...data: unknown[]) => {
      written.push(`console.${method}: ${data.map(String).join(' ')}`);
    });
});

afterEach(() => {
  expect(written, 'a test must not write to the console').toEqual([]);
});
