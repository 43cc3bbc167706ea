# Catches outgoing mail while trying things out: takes everything on port 1025, shows it on port 8025, sends nothing on.
FROM node:20-bookworm-slim
WORKDIR /srv/mail
COPY docker/mail-catcher.mjs ./
USER node
EXPOSE 1025 8025
CMD ["node", "mail-catcher.mjs"]
