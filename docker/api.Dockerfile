# The product: api, built web pages and the command line in one image. Runs as an account without rights.
FROM node:20-bookworm-slim AS build
WORKDIR /src
COPY package.json package-lock.json .npmrc ./
COPY apps/api/package.json apps/api/
COPY apps/web/package.json apps/web/
COPY libs/units/package.json libs/units/
COPY libs/agronomy/package.json libs/agronomy/
COPY libs/irrigation/package.json libs/irrigation/
COPY libs/metering/package.json libs/metering/
COPY libs/showing/package.json libs/showing/
RUN npm ci --ignore-scripts
COPY . .
RUN npm run build && npm prune --omit=dev --ignore-scripts

FROM node:20-bookworm-slim
ENV NODE_ENV=production
WORKDIR /srv/rillbook
COPY --from=build /src/package.json ./
COPY --from=build /src/node_modules ./node_modules
COPY --from=build /src/libs ./libs
COPY --from=build /src/apps/api ./apps/api
COPY --from=build /src/apps/web/package.json ./apps/web/package.json
COPY --from=build /src/apps/web/dist ./apps/web/dist
RUN mkdir -p /var/lib/rillbook && chown node:node /var/lib/rillbook
USER node
EXPOSE 3000
HEALTHCHECK --interval=10s --timeout=3s --start-period=60s CMD ["node", "-e", "fetch('http://127.0.0.1:3000/health').then((answer) => process.exit(answer.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "--enable-source-maps", "apps/api/dist/main.js"]
