import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { APIRoute } from 'astro';
import { content, firm } from '../content/load.ts';

/** The firm's logo under its own name, where it is a PNG: an SVG is the icon. */
export const getStaticPaths = () => {
  const { logo } = firm();
  return logo === undefined || logo.endsWith('.svg') ? [] : [{ params: { logo } }];
};

export const GET: APIRoute = ({ params: { logo = '' } }) =>
  new Response(new Uint8Array(readFileSync(join(content().root, logo))), {
    headers: { 'Content-Type': 'image/png' },
  });
