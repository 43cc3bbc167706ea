/** A small world in which every file has every column, and every kind of cell stands at least once. */
export const everyColumn: Record<string, string> = {
  'clients.csv': `client,emails,language,units,not_to_exceed
Elm HOA,board@elm.example.test office@elm.example.test,es,metric,900.50
"=Sum, Inc.",,,,
`,
  'stations.csv': `station,latitude,longitude,elevation_ft
Ridge,38.1,-121.02,241
`,
  'properties.csv': `property,client,address,city,latitude,longitude,elevation_ft,time_zone,weather_station,water_supplier,allowance_from,allowance_etaf,allowance_gal_per_month,special_landscape_area_sqft,notes
Elm Court,Elm HOA,"1 Elm Street, rear",Dry Gulch,38.0742,-120.9689,241,America/Los_Angeles,Ridge,Gulch Water,contract,0.8,1 2 3 4 5 6.5 7 8 9 10 11 12000,1250.5,"Two lines:
the gate is left of the sign"
-Minus Park,Elm HOA,,,,,,America/Denver,Far Station,,ordinance,0.45,,,
`,
  'meters.csv': `meter,property,kind,water,unit,multiplier,digits,resolution,size_in,max_gpm,pressure_psi,indoor_gal_per_day,price_per_unit,installed_on,first_register,removed_on,last_register
M1,Elm Court,mixed,recycled,CCF,10,6,0.1,1.5,100,66,120,4.25,2014-04-02,0,2026-05-14,812.4
M2,Elm Court,mixed,potable,kgal,1,,,,,,,,2026-05-14,0,,
M1,-Minus Park,irrigation,well,m3,,,,,,,,,,,,
`,
  'controllers.csv': `controller,property,stations,programs,starts_per_program,max_minutes,minute_step,adjust_scope,adjust_step_percent,max_adjust_percent,monthly_adjust_percent,runs_at_once,cycle_soak,master_valve,rain_sensor,rain_sensor_in,flow_sensor,location
A,Elm Court,12,4,4,360,0.5,program,5,200,10 20 30 40 50 60 70 80 90 100 110 120,2,yes,no,yes,0.25,no,Behind the pool gate
A,-Minus Park,6,,,,,,,,,,,,,,,
`,
  'zones.csv': `property,zone,controller,station,meter,area_sqft,plants,water_need,plant_factor,method,precip_in_per_hr,flow_gpm,flow_source,hand_gal_per_week,du_lq,soil,slope_percent,sun,density,root_depth_in,mulch_in,leaching_fraction,established_on
Elm Court,Lawn 1,A,1,M1,12560.25,turf cool-season,high,0.8,rotor,0.48,62.67,measured,,0.65,clay loam,5,full,1.1,8,0,0.05,2015-03-01
Elm Court,Pots,,,none,100,annuals,,,hand,,,,250.5,,,,shade,,,2,,
`,
  'plantings.csv': `property,zone,species,cover_percent,water_need,planted_on
Elm Court,Lawn 1,Festuca arundinacea,100,high,2014-10-01
`,
  'settings.csv': `property,controller,effective_at,record,state,program,days,starts,adjust_percent,station,minutes,cycles,soak_min
Elm Court,A,2026-06-01T09:30,found,on,A,Mon Wed Fri,05:00 22:30,85,1,12.5,3,20
Elm Court,A,2026-06-01T09:30,found,on,A,Mon Wed Fri,05:00 22:30,85,2,8,,
Elm Court,A,2026-06-01T09:30,found,on,B,every 3 from 2026-06-01,none,110,3,4,,
Elm Court,A,2026-06-20T10:00,left,off,,,,,,,,
Elm Court,A,2026-07-01T00:00,planned,on,A,odd,21:00,100,1,15,,
`,
  'pauses.csv': `property,controller,paused_from,paused_until
Elm Court,A,2026-03-02T16:00,2026-03-05T00:00
-Minus Park,A,2026-08-01T07:00-06:00,
`,
  'readings.csv': `property,meter,read_at,register,source,note
Elm Court,M1,2026-05-01T09:12,800.1,crew,"Lid stuck, ""hard"" to open"
Elm Court,M1,2026-05-14T12:00,812.4,bill,
Elm Court,M2,2026-11-01T01:30,12,feed,
Elm Court,M2,2026-11-01T01:30-08:00,13,feed,
`,
  'usage.csv': `property,meter,start,end,volume,unit
Elm Court,M2,2026-11-01T00:00,2026-11-01T01:00,12.25,gal
Elm Court,M2,2026-11-01T01:00,2026-11-01T01:00,0.1,gal
Elm Court,M2,2026-11-01T01:00,2026-11-01T02:00,7,gal
`,
  'bills.csv': `property,meter,start,end,end_included,volume,unit,amount
Elm Court,M1,2026-01-01,2026-01-31,yes,204,HCF,871.70
Elm Court,M1,2026-02-01,2026-03-01,,198,,-12.5
`,
  'weather.csv': `station,date,tmax_f,tmin_f,rhmax,rhmin,dewpoint_f,wind_mph,wind_height_ft,solar_mj_m2,rain_in,eto_in
Ridge,2026-06-01,95.4,58.1,88,21,49.9,4.5,10,28.31,0.00,0.29
Ridge,2026-06-02,96,,,,,,,,,
`,
  'rules.csv': `rule,water_supplier,allowed_days,days_per_week,address_parity,blocked_from,blocked_until,max_minutes,hours_after_rain,rain_in,plants,exempt_methods,water,effective_from,effective_until
No noon,Gulch Water,Mon Thu,2,odd,10:00,20:00,15,48,0.1,"turf cool-season, turf warm-season","drip, hand",potable,2026-05-01,2026-10-31
No noon,Gulch Water,none,,,,,,,,,,,,
`,
  'rates.csv': `water_supplier,effective_from,fixed,tier,up_to,up_to_is,unit,price
Gulch Water,2026-01-01,42.00,1,1.5,share of allowance,CCF,3.86
Gulch Water,2026-01-01,42.00,2,,,CCF,6.10
Other Water,2025-07-01,,1,10,,kgal,5
Other Water,2025-07-01,,2,,,kgal,7
`,
  'backflow.csv': `property,assembly,location,kind,last_tested_on,next_test_due_on
Elm Court,Main,beside the meter,reduced pressure,2026-04-14,2027-04-14
`,
};
