/** @type {import('next').NextConfig} */
const config = {
	poweredByHeader: false,
	reactStrictMode: true,
	devIndicators: false,
	// Types are checked once, by `npm run check` and `npm test`; the build need not do it again.
	typescript: { ignoreBuildErrors: true },
	serverExternalPackages: ["better-sqlite3", "@prisma/client", "@prisma/adapter-better-sqlite3", "sharp", "pdfkit", "qrcode"],
	outputFileTracingRoot: import.meta.dirname,
	turbopack: { root: import.meta.dirname },
	experimental: { serverActions: { bodySizeLimit: "1mb" } },
};
export default config;
