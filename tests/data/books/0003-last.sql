BEGIN TRANSACTION;
CREATE TABLE book_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT book_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "book_version" VALUES('0003');
CREATE TABLE door_log (
	sequence INTEGER NOT NULL, 
	at VARCHAR(25) NOT NULL, 
	person CHAR(32), 
	what TEXT NOT NULL, 
	PRIMARY KEY (sequence)
);
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
INSERT INTO "entry" VALUES('9fd9e66acd6e586a9b1541ef12737568',1,'yard','2026-04-03',NULL,NULL,'Mill Lane',NULL,'{"id": "9fd9e66a-cd6e-586a-9b15-41ef12737568", "on": "2026-04-03", "remark": "by the gate", "kind": "yard", "yard": "Mill Lane", "climate": "Dublin Airport", "district": "lowland mixed farmland"}');
INSERT INTO "entry" VALUES('6dc5f144508555b6b9bfd772c4ebbd48',2,'yard','2026-04-03',NULL,NULL,'Hill Top',NULL,'{"id": "6dc5f144-5085-55b6-b9bf-d772c4ebbd48", "on": "2026-04-03", "remark": "", "kind": "yard", "yard": "Hill Top", "climate": "Cork Airport", "district": "lowland mixed farmland"}');
INSERT INTO "entry" VALUES('4c8c2628396456f6bb0f09c27d04e5cb',3,'colony','2026-04-03','Alder',NULL,'Mill Lane',NULL,'{"id": "4c8c2628-3964-56f6-bb0f-09c27d04e5cb", "on": "2026-04-03", "remark": "", "kind": "colony", "yard": "Mill Lane", "colony": "Alder", "hive": "national timber", "queen_year": 2025}');
INSERT INTO "entry" VALUES('e8a99281789250f2a8a238ee3588428c',4,'visit','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "e8a99281-7892-50f2-a8a2-38ee3588428c", "on": "2026-04-03", "remark": "quiet, bringing pollen", "kind": "visit", "colony": "Alder", "frames_of_bees": 6.5, "frames_of_brood": 3.0, "frames_of_stores": 2.0, "stores_kg": 5.0, "hive_weight_kg": 31.5, "eggs": true, "queen_seen": false, "queen_cells": "none", "syrup_left_g": 120.0, "temper": 2, "disease_signs": "none"}');
INSERT INTO "entry" VALUES('5c814f3491a65d71b2cce703a84a5f2e',5,'tray count','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "5c814f34-91a6-5d71-b2cc-e703a84a5f2e", "on": "2026-04-03", "remark": "", "kind": "tray count", "colony": "Alder", "mites": 12, "days": 7.0}');
INSERT INTO "entry" VALUES('33ccfe442ed355789510f851164087a3',6,'wash count','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "33ccfe44-2ed3-5578-9510-f851164087a3", "on": "2026-04-03", "remark": "", "kind": "wash count", "colony": "Alder", "mites": 3, "bees": 300, "method": "wash"}');
INSERT INTO "entry" VALUES('36ff91224ca1561c9ffa971a869fc2c7',7,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "36ff9122-4ca1-561c-9ffa-971a869fc2c7", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "drawn frame", "count": 1}');
INSERT INTO "entry" VALUES('7299f585f47352d59333fa96d1ef3f8b',8,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "7299f585-f473-52d5-9333-fa96d1ef3f8b", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "foundation frame", "count": -1}');
INSERT INTO "entry" VALUES('2f977be8072054339e05b301b321dffd',9,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "2f977be8-0720-5433-9e05-b301b321dffd", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "brood frame", "count": 1}');
INSERT INTO "entry" VALUES('471038d115af54d49be3be78c1ad0b39',10,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "471038d1-15af-54d4-9be3-be78c1ad0b39", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "stores frame", "count": -1}');
INSERT INTO "entry" VALUES('194288d9bb4058e583706707dbbab33d',11,'change','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "194288d9-bb40-58e5-8370-6707dbbab33d", "on": "2026-04-03", "remark": "", "kind": "change", "colony": "Alder", "part": "feeder", "count": -1}');
INSERT INTO "entry" VALUES('ebc01fce48c0561a98f0d1ddffaa3941',12,'feed','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "ebc01fce-48c0-561a-98f0-d1ddffaa3941", "on": "2026-04-03", "remark": "", "kind": "feed", "colony": "Alder", "feed": "syrup", "grams": 500.0, "sugar_fraction": 0.6, "temperature_c": 20.0}');
INSERT INTO "entry" VALUES('62d1b5e379a3502fa298797b89c1dabc',13,'stack','2026-04-03','Alder',NULL,NULL,NULL,'{"id": "62d1b5e3-79a3-502f-a298-797b89c1dabc", "on": "2026-04-03", "remark": "", "kind": "stack", "colony": "Alder", "hive": "national timber", "frames": 8, "foundation": 1, "dummy_boards": 1, "supers": 0, "excluder": false, "entrance_mm": 60, "tray_open_mm": 100, "cover": "crown board", "pitch_mm": 36.5}');
INSERT INTO "entry" VALUES('2caf53d875b653f991f17314660e5c5b',14,'colony','2026-04-03','Birch',NULL,'Mill Lane',NULL,'{"id": "2caf53d8-75b6-53f9-91f1-7314660e5c5b", "on": "2026-04-03", "remark": "", "kind": "colony", "yard": "Mill Lane", "colony": "Birch", "hive": "national timber", "queen_year": 2024}');
INSERT INTO "entry" VALUES('9845589c0aa650cfbc56581b4a4be75d',15,'visit','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "9845589c-0aa6-50cf-bc56-581b4a4be75d", "on": "2026-04-03", "remark": "", "kind": "visit", "colony": "Birch", "frames_of_bees": 7.0, "frames_of_brood": 4.0, "eggs": false, "queen_seen": true, "queen_cells": "charged", "temper": 5, "disease_signs": "Chalk brood"}');
INSERT INTO "entry" VALUES('1afc8385c3b45e61b0ab669719bbda2c',16,'treatment','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "1afc8385-c3b4-5e61-b0ab-669719bbda2c", "on": "2026-04-03", "remark": "", "kind": "treatment", "colony": "Birch", "substance": "oxalic acid", "product": "crystals", "batch": "L-17", "amount": "5 g", "until": "2026-04-20"}');
INSERT INTO "entry" VALUES('85a81ed6ed9d503d911e5ff6d850c31e',17,'feed','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "85a81ed6-ed9d-503d-911e-5ff6d850c31e", "on": "2026-04-03", "remark": "", "kind": "feed", "colony": "Birch", "feed": "fondant", "grams": 2500.0, "sugar_fraction": 0.88}');
INSERT INTO "entry" VALUES('c8ce7173ac7d5af2b11e045f14afc288',18,'queen','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "c8ce7173-ac7d-5af2-b11e-045f14afc288", "on": "2026-04-03", "remark": "", "kind": "queen", "colony": "Birch", "event": "virgin", "queen_year": 2024}');
INSERT INTO "entry" VALUES('b6571fb17a5d5929931292733306248c',19,'split','2026-04-03','Birch','Cedar',NULL,NULL,'{"id": "b6571fb1-7a5d-5929-9312-92733306248c", "on": "2026-04-03", "remark": "", "kind": "split", "colony": "Birch", "new_colony": "Cedar", "hive": "nuc 6 polystyrene", "frames_of_bees": 2.0, "frames_of_brood": 1.0, "frames_of_stores": 0.5, "goes_with": "cell"}');
INSERT INTO "entry" VALUES('54ba05a7b032574db687f45a17f1de62',20,'stack','2026-04-03','Birch',NULL,NULL,NULL,'{"id": "54ba05a7-b032-574d-b687-f45a17f1de62", "on": "2026-04-03", "remark": "", "kind": "stack", "colony": "Birch", "hive": "national timber"}');
INSERT INTO "entry" VALUES('16f543f8774352a2933f15fc47c508a9',21,'visit','2026-04-10','Cedar',NULL,NULL,NULL,'{"id": "16f543f8-7743-52a2-933f-15fc47c508a9", "on": "2026-04-10", "remark": "", "kind": "visit", "colony": "Cedar", "frames_of_bees": 2.0, "frames_of_brood": 0.0, "stores_kg": 1.5}');
INSERT INTO "entry" VALUES('35aaa23dd5cc506c93b6043b7413e1ca',22,'feed','2026-04-10','Cedar',NULL,NULL,NULL,'{"id": "35aaa23d-d5cc-506c-93b6-043b7413e1ca", "on": "2026-04-10", "remark": "", "kind": "feed", "colony": "Cedar", "feed": "syrup", "grams": 300.0, "sugar_fraction": 0.6}');
INSERT INTO "entry" VALUES('608cba95ff615ff0995eea5a10b5704d',23,'queen','2026-04-10','Cedar',NULL,NULL,NULL,'{"id": "608cba95-ff61-5ff0-995e-ea5a10b5704d", "on": "2026-04-10", "remark": "", "kind": "queen", "colony": "Cedar", "event": "introduced"}');
INSERT INTO "entry" VALUES('4d426aa3bfeb5a809bc240b479ec2c7d',24,'stack','2026-04-10','Cedar',NULL,NULL,NULL,'{"id": "4d426aa3-bfeb-5a80-9bc2-40b479ec2c7d", "on": "2026-04-10", "remark": "", "kind": "stack", "colony": "Cedar", "frames": 6, "foundation": 0, "dummy_boards": 0, "cover": "cushion"}');
INSERT INTO "entry" VALUES('157239c1dbab58cf91763d8d09ea17e3',25,'move','2026-04-10','Cedar',NULL,'Hill Top',NULL,'{"id": "157239c1-dbab-58cf-9176-3d8d09ea17e3", "on": "2026-04-10", "remark": "", "kind": "move", "colony": "Cedar", "yard": "Hill Top"}');
INSERT INTO "entry" VALUES('e57f45c583bb5a548aefc151116a6b18',26,'colony','2026-06-01','Dogwood',NULL,'Mill Lane',NULL,'{"id": "e57f45c5-83bb-5a54-8aef-c151116a6b18", "on": "2026-06-01", "remark": "", "kind": "colony", "yard": "Mill Lane", "colony": "Dogwood", "hive": "smith"}');
INSERT INTO "entry" VALUES('33d87aa98b7250a89c94457f294a8a19',27,'visit','2026-06-01','Dogwood',NULL,NULL,NULL,'{"id": "33d87aa9-8b72-50a8-9c94-457f294a8a19", "on": "2026-06-01", "remark": "", "kind": "visit", "colony": "Dogwood", "frames_of_bees": 10.0, "frames_of_brood": 8.0, "stores_kg": 12.0, "eggs": true, "queen_cells": "sealed", "syrup_left_g": 0.0}');
INSERT INTO "entry" VALUES('c1b63ac61d785ff99f7e1bde50dc51ec',28,'harvest','2026-06-01','Dogwood',NULL,NULL,NULL,'{"id": "c1b63ac6-1d78-5ff9-9f7e-1bde50dc51ec", "on": "2026-06-01", "remark": "", "kind": "harvest", "colony": "Dogwood", "honey_kg": 9.5, "supers": 1}');
INSERT INTO "entry" VALUES('0bb5173b829c54cfbe6258e9cda29f5a',29,'queen','2026-06-01','Dogwood',NULL,NULL,NULL,'{"id": "0bb5173b-829c-54cf-be62-58e9cda29f5a", "on": "2026-06-01", "remark": "", "kind": "queen", "colony": "Dogwood", "event": "cells knocked down"}');
INSERT INTO "entry" VALUES('6e6ad7ae9afd5e0ea3daa46d7751339c',30,'stack','2026-06-01','Dogwood',NULL,NULL,NULL,'{"id": "6e6ad7ae-9afd-5e0e-a3da-a46d7751339c", "on": "2026-06-01", "remark": "", "kind": "stack", "colony": "Dogwood", "hive": "smith", "frames": 11, "supers": 1, "excluder": true, "entrance_mm": 200, "tray_open_mm": 460, "cover": "vented"}');
INSERT INTO "entry" VALUES('4705f6cdf3c45bb7a000186c9dc6b005',31,'visit','2026-08-01','Alder',NULL,NULL,NULL,'{"id": "4705f6cd-f3c4-5bb7-a000-186c9dc6b005", "on": "2026-08-01", "remark": "weak", "kind": "visit", "colony": "Alder", "frames_of_bees": 3.0}');
INSERT INTO "entry" VALUES('3b40bd5049a85f80ab50cbeaacd72e34',32,'unite','2026-08-01','Alder','Birch',NULL,NULL,'{"id": "3b40bd50-49a8-5f80-ab50-cbeaacd72e34", "on": "2026-08-01", "remark": "", "kind": "unite", "colony": "Alder", "into": "Birch"}');
INSERT INTO "entry" VALUES('f148770743f65379befcc39f7dbc34e9',33,'visit','2026-10-01','Dogwood',NULL,NULL,NULL,'{"id": "f1487707-43f6-5379-befc-c39f7dbc34e9", "on": "2026-10-01", "remark": "to a beginner", "kind": "visit", "colony": "Dogwood"}');
INSERT INTO "entry" VALUES('bec60763184f51b59f651ab56d251020',34,'end','2026-10-01','Dogwood',NULL,NULL,NULL,'{"id": "bec60763-184f-51b5-9f65-1ab56d251020", "on": "2026-10-01", "remark": "", "kind": "end", "colony": "Dogwood", "reason": "sold"}');
INSERT INTO "entry" VALUES('00000000000000000000000000000385',35,'visit','2026-04-20','Dogwood',NULL,NULL,NULL,'{"id": "00000000-0000-0000-0000-000000000385", "on": "2026-04-20", "remark": "\u017d\u00e1r, 5 \u00b0C \u2014 \u201cwet\u201d", "kind": "visit", "colony": "Dogwood", "frames_of_bees": 7.1}');
INSERT INTO "entry" VALUES('00000000000000000000000000000386',36,'correction','2026-04-21',NULL,NULL,NULL,'00000000000000000000000000000385','{"id": "00000000-0000-0000-0000-000000000386", "on": "2026-04-21", "remark": "misread", "kind": "correction", "corrects": "00000000-0000-0000-0000-000000000385"}');
CREATE TABLE noted_by (
	sequence INTEGER NOT NULL, 
	person CHAR(32) NOT NULL, 
	at VARCHAR(25) NOT NULL, 
	PRIMARY KEY (sequence)
);
CREATE TABLE person (
	id CHAR(32) NOT NULL, 
	name TEXT NOT NULL, 
	role VARCHAR(10) NOT NULL, 
	since VARCHAR(25) NOT NULL, 
	ended VARCHAR(25), 
	passphrase TEXT, 
	invitation VARCHAR(64), 
	invited_until VARCHAR(25), 
	seed VARCHAR(64), 
	step INTEGER, 
	recovery JSON, 
	PRIMARY KEY (id), 
	UNIQUE (invitation)
);
CREATE TABLE seal (
	sequence INTEGER NOT NULL, 
	hash VARCHAR(64) NOT NULL, 
	PRIMARY KEY (sequence)
);
INSERT INTO "seal" VALUES(1,'da82884a8bc244624b42beb05beeba25fcabbfe408bc4bd4c6388510928cd5eb');
INSERT INTO "seal" VALUES(2,'ecb462eff25547f3dbb644f3173c696a7a893d07c3bb67370a8fdbd0e3ad9e03');
INSERT INTO "seal" VALUES(3,'71e7a5c3fc009261763f654382dc49ff767f78373a45d8617411c3e1016a74c0');
INSERT INTO "seal" VALUES(4,'ae4db95b33c669336d64c0afdea2e3ab39d13b869a39ae808b07213bf207666d');
INSERT INTO "seal" VALUES(5,'01678ed23736adb09a6e44480d6b94409fa51bf9a550bfc0c58112888a59b396');
INSERT INTO "seal" VALUES(6,'0284cf50ead040be5e7fabc291a31a21397e54bf427fed25559cbb7b3a243ad7');
INSERT INTO "seal" VALUES(7,'60d0d69fccfc90b2701a90995135503633f8b52e0ec9e193da5c88037d7935b6');
INSERT INTO "seal" VALUES(8,'c69afa025b4c57a425a1a3036b86289c5863acc4500bbb0f7757334ffce6f4e7');
INSERT INTO "seal" VALUES(9,'6a6581e2c38d44918eede8ebd6756530720d810f89421117b11f6ef7f0e7f9c6');
INSERT INTO "seal" VALUES(10,'d2e171cde961bf5cdb7a64a5875c19a6f4a14e96c38a2514736b2d85c990bf13');
INSERT INTO "seal" VALUES(11,'432c7774210013a86353b7edc845d2c789a3bf75ccae8b92f1cf7885080e71cc');
INSERT INTO "seal" VALUES(12,'b7cf1eb6a3d83e60791134aa69455e3d756b9fcd589283aaa8e6f39c41c6a1fb');
INSERT INTO "seal" VALUES(13,'9402c4e00c2143ea454b02c2f43b0dc70417f39250f7442e9c02d1d067fa5131');
INSERT INTO "seal" VALUES(14,'7d9dc0fcd4aef668bcef0fec9cc2beda8d0952a1314e2073e456551cc7601256');
INSERT INTO "seal" VALUES(15,'e418cd72e65d1e0e6cc479c8284852ee6367aa2d1a9d1bb8834330cd12243e83');
INSERT INTO "seal" VALUES(16,'f29d5eb0c5f40ceaeb5bd31468c1868e1d8a0a2fb8f60e6fb916af8365d6e17d');
INSERT INTO "seal" VALUES(17,'cb2c687cf0af8506a3e6836f1ceb6939a7a8b12d5c1ab7a33e7e495744f9d14c');
INSERT INTO "seal" VALUES(18,'a70ce995a52a5bc9b504c02aee84e5837fc8ffae3de20d21bd65f6cad7eb9884');
INSERT INTO "seal" VALUES(19,'fcea134f5fda2ec921c5de5df12b5dc03bc13d4740c9752e0e271ca3a305dfa5');
INSERT INTO "seal" VALUES(20,'6ff9c41648d57d3eef22b14f498a0ef0473166c1063f044f73d470ef99019fa4');
INSERT INTO "seal" VALUES(21,'b992f6438c0e97197d615d539961b19bc9dadd9de453db5b81a9c811ff2c5d7a');
INSERT INTO "seal" VALUES(22,'1d7c50c905873eac4928338f5ae61395fdab3477462894625d8e0ef52a88ba1d');
INSERT INTO "seal" VALUES(23,'c53aff4c8e7355b79942ddc167ec76bef865fe09f873a2e80aaa38c40fa88617');
INSERT INTO "seal" VALUES(24,'63380d2fd476c8a48628172f855e80b38efa9a48b43c009ff442c08645f3f14d');
INSERT INTO "seal" VALUES(25,'5b0caa70a7a48ad81aeaa3edbb7cd0d767d4d01cbcc1bf0a258e6cccab7b3d08');
INSERT INTO "seal" VALUES(26,'eb1f102c9221f3d910fc68072eb855ce772311baa6984acbd24738377e97db20');
INSERT INTO "seal" VALUES(27,'bd1170f4fb1cb5703440c1cc818d5e2866c51be57024a26389fc976376c4cb12');
INSERT INTO "seal" VALUES(28,'6d9d670839311d4424c2cec8d0efe89a6a8e69191c991037d36da42491c9b846');
INSERT INTO "seal" VALUES(29,'de57de5526d795e3bad3c04e82b0d3b6ca217afc6136271ce54fed5539dec033');
INSERT INTO "seal" VALUES(30,'8f681759cd6af195ea9504543af3bfc4e5c93212a4e45f4fa5e624b64f09565a');
INSERT INTO "seal" VALUES(31,'7bd826c550c262776d25a4bcdda39c1b85f4a4271965c7d9d30601435b9b4fc6');
INSERT INTO "seal" VALUES(32,'7de59fcaa5f20770c4411f2d4cafc6973444891b32da8efaa85857e7a28c618b');
INSERT INTO "seal" VALUES(33,'81f2c6be11b99dcf88ba06fa8cd1921f563ba4b15f8b8a2ae10ccc1a428fd9ad');
INSERT INTO "seal" VALUES(34,'75c93140da8303fb90abb6f78d1b122a34e99aaf3a88a5d4c20ac101b0eb4873');
INSERT INTO "seal" VALUES(35,'c835dfea10f6746f06e41a8a0820b95b55647ef5332604f47b83ad53718ea3da');
INSERT INTO "seal" VALUES(36,'58dda717c8a94b904851968f6ce5e93ea8d6449e51cb25a92daa1b3a98973de3');
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
CREATE TRIGGER seal_is_never_changed BEFORE UPDATE ON seal
BEGIN SELECT RAISE(ABORT, 'a seal is never changed'); END;
CREATE TRIGGER seal_is_never_deleted BEFORE DELETE ON seal
BEGIN SELECT RAISE(ABORT, 'a seal is never deleted'); END;
CREATE TRIGGER noted_by_is_never_changed BEFORE UPDATE ON noted_by
BEGIN SELECT RAISE(ABORT, 'who noted an entry is never changed'); END;
CREATE TRIGGER noted_by_is_never_deleted BEFORE DELETE ON noted_by
BEGIN SELECT RAISE(ABORT, 'who noted an entry is never deleted'); END;
COMMIT;
