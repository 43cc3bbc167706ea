export PATH=$PATH
node tests/.shot.mjs office 1280 en light r-list /reports
node tests/.shot.mjs office 1280 es light r-list-es /reports
node tests/.shot.mjs owner 1280 en light r-company /reports/company
node tests/.shot.mjs client 1280 en light w-desk /water
node tests/.shot.mjs client 390 es light w-phone /water
