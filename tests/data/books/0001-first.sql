BEGIN TRANSACTION;
CREATE TABLE book_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT book_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "book_version" VALUES('0001');
CREATE TABLE entry (
	id CHAR(32) NOT NULL, 
	sequence INTEGER NOT NULL, 
	kind VARCHAR(20) NOT NULL, 
	happened DATE NOT NULL, 
	colony TEXT, 
	other_colony TEXT, 
	yard TEXT, 
	corrects CHAR(32), 
	body JSON NOT NULL, 
	PRIMARY KEY (id), 
	UNIQUE (sequence)
);
INSERT INTO "entry" VALUES('4c8c2628396456f6bb0f09c27d04e5cb',1,'colony','2026-04-03','Alder',NULL,'Mill Lane',NULL,'{"id": "4c8c2628-3964-56f6-bb0f-09c27d04e5cb", "on": "2026-04-03", "remark": "", "kind": "colony", "colony": "Alder", "yard": "Mill Lane", "hive": "national timber", "queen_year": 2025}');
INSERT INTO "entry" VALUES('e8a99281789250f2a8a238ee3588428c',2,'visit','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "e8a99281-7892-50f2-a8a2-38ee3588428c", "on": "2026-04-03", "remark": "quiet, bringing pollen", "kind": "visit", "colony": "Alder", "frames_of_bees": 6.5, "frames_of_brood": 3.0, "frames_of_stores": 2.0, "stores_kg": 5.0, "hive_weight_kg": 31.5, "eggs": true, "queen_seen": false, "queen_cells": "none", "syrup_left_g": 120.0, "temper": 2, "disease_signs": "none"}');
INSERT INTO "entry" VALUES('5c814f3491a65d71b2cce703a84a5f2e',3,'tray count','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "5c814f34-91a6-5d71-b2cc-e703a84a5f2e", "on": "2026-04-03", "remark": "", "kind": "tray count", "colony": "Alder", "mites": 12, "days": 7.0}');
INSERT INTO "entry" VALUES('33ccfe442ed355789510f851164087a3',4,'wash count','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "33ccfe44-2ed3-5578-9510-f851164087a3", "on": "2026-04-03", "remark": "", "kind": "wash count", "colony": "Alder", "mites": 3, "bees": 300, "method": "wash"}');
INSERT INTO "entry" VALUES('36ff91224ca1561c9ffa971a869fc2c7',5,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "36ff9122-4ca1-561c-9ffa-971a869fc2c7", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "drawn frame", "count": 1}');
INSERT INTO "entry" VALUES('7299f585f47352d59333fa96d1ef3f8b',6,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "7299f585-f473-52d5-9333-fa96d1ef3f8b", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "foundation frame", "count": -1}');
INSERT INTO "entry" VALUES('2f977be8072054339e05b301b321dffd',7,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "2f977be8-0720-5433-9e05-b301b321dffd", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "brood frame", "count": 1}');
INSERT INTO "entry" VALUES('471038d115af54d49be3be78c1ad0b39',8,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "471038d1-15af-54d4-9be3-be78c1ad0b39", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "stores frame", "count": -1}');
INSERT INTO "entry" VALUES('ebc01fce48c0561a98f0d1ddffaa3941',9,'feed','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "ebc01fce-48c0-561a-98f0-d1ddffaa3941", "on": "2026-04-03", "remark": "", "kind": "feed", "colony": "Alder", "feed": "syrup", "grams": 500.0, "sugar_fraction": 0.6, "temperature_c": 20.0}');
INSERT INTO "entry" VALUES('62d1b5e379a3502fa298797b89c1dabc',10,'stack','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "62d1b5e3-79a3-502f-a298-797b89c1dabc", "on": "2026-04-03", "remark": "", "kind": "stack", "colony": "Alder", "hive": "national timber", "frames": 8, "foundation": 1, "dummy_boards": 1, "supers": 0, "excluder": false, "entrance_mm": 60, "tray_open_mm": 100, "cover": "crown board", "pitch_mm": 36.5}');
INSERT INTO "entry" VALUES('2caf53d875b653f991f17314660e5c5b',11,'colony','2026-04-03','Birch',NULL,'Mill Lane',NULL,'{"id": "2caf53d8-75b6-53f9-91f1-7314660e5c5b", "on": "2026-04-03", "remark": "", "kind": "colony", "colony": "Birch", "yard": "Mill Lane", "hive": "national timber", "queen_year": 2024}');
INSERT INTO "entry" VALUES('9845589c0aa650cfbc56581b4a4be75d',12,'visit','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "9845589c-0aa6-50cf-bc56-581b4a4be75d", "on": "2026-04-03", "remark": "", "kind": "visit", "colony": "Birch", "frames_of_bees": 7.0, "frames_of_brood": 4.0, "frames_of_stores": null, "stores_kg": null, "hive_weight_kg": null, "eggs": false, "queen_seen": true, "queen_cells": "charged", "syrup_left_g": null, "temper": 5, "disease_signs": "Chalk brood"}');
INSERT INTO "entry" VALUES('1afc8385c3b45e61b0ab669719bbda2c',13,'treatment','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "1afc8385-c3b4-5e61-b0ab-669719bbda2c", "on": "2026-04-03", "remark": "", "kind": "treatment", "colony": "Birch", "substance": "oxalic acid", "product": "crystals", "batch": "L-17", "amount": "5 g", "until": "2026-04-20"}');
INSERT INTO "entry" VALUES('85a81ed6ed9d503d911e5ff6d850c31e',14,'feed','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "85a81ed6-ed9d-503d-911e-5ff6d850c31e", "on": "2026-04-03", "remark": "", "kind": "feed", "colony": "Birch", "feed": "fondant", "grams": 2500.0, "sugar_fraction": 0.88, "temperature_c": null}');
INSERT INTO "entry" VALUES('c8ce7173ac7d5af2b11e045f14afc288',15,'queen','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "c8ce7173-ac7d-5af2-b11e-045f14afc288", "on": "2026-04-03", "remark": "", "kind": "queen", "colony": "Birch", "event": "virgin", "queen_year": 2024}');
INSERT INTO "entry" VALUES('b6571fb17a5d5929931292733306248c',16,'split','2026-04-03','Birch','Cedar',NULL,NULL,'{"id": "b6571fb1-7a5d-5929-9312-92733306248c", "on": "2026-04-03", "remark": "", "kind": "split", "colony": "Birch", "new_colony": "Cedar", "hive": "nuc 6 polystyrene", "frames_of_bees": 2.0, "frames_of_brood": 1.0, "frames_of_stores": 0.5, "goes_with": "cell"}');
INSERT INTO "entry" VALUES('54ba05a7b032574db687f45a17f1de62',17,'stack','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "54ba05a7-b032-574d-b687-f45a17f1de62", "on": "2026-04-03", "remark": "", "kind": "stack", "colony": "Birch", "hive": "national timber", "frames": null, "foundation": null, "dummy_boards": null, "supers": null, "excluder": null, "entrance_mm": null, "tray_open_mm": null, "cover": null, "pitch_mm": null}');
INSERT INTO "entry" VALUES('16f543f8774352a2933f15fc47c508a9',18,'visit','2026-04-10','Cedar',NULL,NULL,NULL,'{"id": "16f543f8-7743-52a2-933f-15fc47c508a9", "on": "2026-04-10", "remark": "", "kind": "visit", "colony": "Cedar", "frames_of_bees": 2.0, "frames_of_brood": 0.0, "frames_of_stores": null, "stores_kg": 1.5, "hive_weight_kg": null, "eggs": null, "queen_seen": null, "queen_cells": null, "syrup_left_g": null, "temper": null, "disease_signs": null}');
INSERT INTO "entry" VALUES('35aaa23dd5cc506c93b6043b7413e1ca',19,'feed','2026-04-10','Cedar',NULL,NULL,NULL,'{"id": "35aaa23d-d5cc-506c-93b6-043b7413e1ca", "on": "2026-04-10", "remark": "", "kind": "feed", "colony": "Cedar", "feed": "syrup", "grams": 300.0, "sugar_fraction": 0.6, "temperature_c": null}');
INSERT INTO "entry" VALUES('608cba95ff615ff0995eea5a10b5704d',20,'queen','2026-04-10','Cedar',NULL,NULL,NULL,'{"id": "608cba95-ff61-5ff0-995e-ea5a10b5704d", "on": "2026-04-10", "remark": "", "kind": "queen", "colony": "Cedar", "event": "introduced", "queen_year": null}');
INSERT INTO "entry" VALUES('4d426aa3bfeb5a809bc240b479ec2c7d',21,'stack','2026-04-10','Cedar',NULL,NULL,NULL,'{"id": "4d426aa3-bfeb-5a80-9bc2-40b479ec2c7d", "on": "2026-04-10", "remark": "", "kind": "stack", "colony": "Cedar", "hive": null, "frames": 6, "foundation": 0, "dummy_boards": 0, "supers": null, "excluder": null, "entrance_mm": null, "tray_open_mm": null, "cover": "cushion", "pitch_mm": null}');
INSERT INTO "entry" VALUES('157239c1dbab58cf91763d8d09ea17e3',22,'move','2026-04-10','Cedar',NULL,'Hill Top',NULL,'{"id": "157239c1-dbab-58cf-9176-3d8d09ea17e3", "on": "2026-04-10", "remark": "", "kind": "move", "colony": "Cedar", "yard": "Hill Top"}');
INSERT INTO "entry" VALUES('e57f45c583bb5a548aefc151116a6b18',23,'colony','2026-06-01','Dogwood',NULL,'Mill Lane',NULL,'{"id": "e57f45c5-83bb-5a54-8aef-c151116a6b18", "on": "2026-06-01", "remark": "", "kind": "colony", "colony": "Dogwood", "yard": "Mill Lane", "hive": "smith", "queen_year": null}');
INSERT INTO "entry" VALUES('33d87aa98b7250a89c94457f294a8a19',24,'visit','2026-06-01','Dogwood',NULL,NULL,NULL,'{"id": "33d87aa9-8b72-50a8-9c94-457f294a8a19", "on": "2026-06-01", "remark": "", "kind": "visit", "colony": "Dogwood", "frames_of_bees": 10.0, "frames_of_brood": 8.0, "frames_of_stores": null, "stores_kg": 12.0, "hive_weight_kg": null, "eggs": true, "queen_seen": null, "queen_cells": "sealed", "syrup_left_g": 0.0, "temper": null, "disease_signs": null}');
INSERT INTO "entry" VALUES('c1b63ac61d785ff99f7e1bde50dc51ec',25,'harvest','2026-06-01','Dogwood',NULL,NULL,NULL,'{"id": "c1b63ac6-1d78-5ff9-9f7e-1bde50dc51ec", "on": "2026-06-01", "remark": "", "kind": "harvest", "colony": "Dogwood", "honey_kg": 9.5, "supers": 1}');
INSERT INTO "entry" VALUES('6e6ad7ae9afd5e0ea3daa46d7751339c',26,'stack','2026-06-01','Dogwood',NULL,NULL,NULL,'{"id": "6e6ad7ae-9afd-5e0e-a3da-a46d7751339c", "on": "2026-06-01", "remark": "", "kind": "stack", "colony": "Dogwood", "hive": "smith", "frames": 11, "foundation": null, "dummy_boards": null, "supers": 1, "excluder": true, "entrance_mm": 200, "tray_open_mm": 460, "cover": "vented", "pitch_mm": null}');
INSERT INTO "entry" VALUES('4705f6cdf3c45bb7a000186c9dc6b005',27,'visit','2026-08-01','Alder',NULL,NULL,NULL,'{"id": "4705f6cd-f3c4-5bb7-a000-186c9dc6b005", "on": "2026-08-01", "remark": "weak", "kind": "visit", "colony": "Alder", "frames_of_bees": 3.0, "frames_of_brood": null, "frames_of_stores": null, "stores_kg": null, "hive_weight_kg": null, "eggs": null, "queen_seen": null, "queen_cells": null, "syrup_left_g": null, "temper": null, "disease_signs": null}');
INSERT INTO "entry" VALUES('3b40bd5049a85f80ab50cbeaacd72e34',28,'unite','2026-08-01','Alder','Birch',NULL,NULL,'{"id": "3b40bd50-49a8-5f80-ab50-cbeaacd72e34", "on": "2026-08-01", "remark": "", "kind": "unite", "colony": "Alder", "into": "Birch"}');
INSERT INTO "entry" VALUES('f148770743f65379befcc39f7dbc34e9',29,'visit','2026-10-01','Dogwood',NULL,NULL,NULL,'{"id": "f1487707-43f6-5379-befc-c39f7dbc34e9", "on": "2026-10-01", "remark": "to a beginner", "kind": "visit", "colony": "Dogwood", "frames_of_bees": null, "frames_of_brood": null, "frames_of_stores": null, "stores_kg": null, "hive_weight_kg": null, "eggs": null, "queen_seen": null, "queen_cells": null, "syrup_left_g": null, "temper": null, "disease_signs": null}');
INSERT INTO "entry" VALUES('bec60763184f51b59f651ab56d251020',30,'end','2026-10-01','Dogwood',NULL,NULL,NULL,'{"id": "bec60763-184f-51b5-9f65-1ab56d251020", "on": "2026-10-01", "remark": "", "kind": "end", "colony": "Dogwood", "reason": "sold"}');
INSERT INTO "entry" VALUES('00000000000000000000000000000385',31,'visit','2026-04-20','Dogwood',NULL,NULL,NULL,'{"id": "00000000-0000-0000-0000-000000000385", "on": "2026-04-20", "remark": "\u017d\u00e1r, 5 \u00b0C \u2014 \u201cwet\u201d", "kind": "visit", "colony": "Dogwood", "frames_of_bees": 7.1, "frames_of_brood": null, "frames_of_stores": null, "stores_kg": null, "hive_weight_kg": null, "eggs": null, "queen_seen": null, "queen_cells": null, "syrup_left_g": null, "temper": null, "disease_signs": null}');
INSERT INTO "entry" VALUES('00000000000000000000000000000386',32,'correction','2026-04-21',NULL,NULL,NULL,'00000000000000000000000000000385','{"id": "00000000-0000-0000-0000-000000000386", "on": "2026-04-21", "remark": "misread", "kind": "correction", "corrects": "00000000-0000-0000-0000-000000000385", "replacement": null}');
CREATE TABLE weather_day (
	place TEXT NOT NULL, 
	day DATE NOT NULL, 
	t_max_c DOUBLE NOT NULL, 
	t_min_c DOUBLE NOT NULL, 
	rain_mm DOUBLE NOT NULL, 
	sun_h DOUBLE NOT NULL, 
	wind_m_s DOUBLE NOT NULL, 
	source TEXT NOT NULL, 
	PRIMARY KEY (place, day)
);
INSERT INTO "weather_day" VALUES('Mill Lane','2026-04-01',0.1,0.1,0.1,0.1,0.1,'station');
INSERT INTO "weather_day" VALUES('Mill Lane','2026-04-02',7.3,7.3,7.3,7.3,7.3,'station');
INSERT INTO "weather_day" VALUES('Mill Lane','2026-04-03',12.25,12.25,12.25,12.25,12.25,'station');
CREATE INDEX ix_entry_colony ON entry (colony);
CREATE INDEX ix_entry_other_colony ON entry (other_colony);
CREATE INDEX ix_entry_corrects ON entry (corrects);
CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed: write a correction'); END;
CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never deleted: write a correction'); END;
COMMIT;
