import type { APIRoute } from 'astro';
import { iconFile, iconPng, icons, type Icon } from '../site/icon.ts';

export const getStaticPaths = () =>
  icons.map((icon) => ({ params: { icon: iconFile(icon).replace('.png', '') }, props: icon }));

export const GET: APIRoute<Icon & Record<string, unknown>> = async ({ props }) =>
  new Response(await iconPng(props), { headers: { 'Content-Type': 'image/png' } });
