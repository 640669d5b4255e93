/* eslint-disable */
/** Operations of the screens by the SHA-256 of their documents. */
export const persistedOperations: Readonly<Record<string, string>> = {
  'sha256:39300be1f6ff47633a8c264de2a924d5b71367b646d3bf86d82d7c51c6543956':
    "mutation SignOut { signOut }",
  'sha256:3ea48a20707bcca15d4025168e0c2192b58af8c8f9f31614f5a0b36f0b845845':
    "query Deputies { deputies { depot from id namedBy officer officerId person personId reason state tour until } people { id name passwordByOfficer role state } tours(first: 100) { edges { node { id name } } } }",
  'sha256:d7b3b55787de117ad1a5f37a479e08e56fb331918b0deb347f6e9203f1d21ec7':
    "mutation NameDeputy($deputy: DeputyInput!) { nameDeputy(deputy: $deputy) }",
  'sha256:528d2d87db7178cb915d471f35a0a66bd8fafe3fe74cdd7d7d1e42e66a54dc52':
    "mutation SignDeputy($id: ID!) { signDeputy(id: $id) }",
  'sha256:c9a32e7fa2d8ac458eaa40d6af3c5d7a7bf5ea44342be502b1f75a10c1c7a69d':
    "mutation WithdrawDeputy($id: ID!) { withdrawDeputy(id: $id) }",
  'sha256:2b4c295ef374434ff526084b294f022a485c5154b2a0945eb148f5c78be11086':
    "mutation SetOnePerson($isOn: Boolean!, $reason: String!) { setOnePerson(isOn: $isOn, reason: $reason) }",
  'sha256:f477bac87163e09aa9b8d872f404a7d5776169f652d29b93b3af39acf610e7dc':
    "query People { people { email id name proposedBy role sessions state } }",
  'sha256:51ac2a85c37a7d0acaa707eb21d07bdf55ea1f95fa6cf032f70f7c23ccfcad25':
    "mutation AddPerson($person: PersonInput!) { addPerson(person: $person) { id } }",
  'sha256:eac8cbd84d579100261bed4458b0bd78a9c8bee0956c5a6b6121ceb4507b4fe4':
    "mutation ChangePassword($next: String!, $old: String!) { changePassword(old: $old, next: $next) }",
  'sha256:f7f82997cd90c770ca56e873c2bf5d3bc679cf288727abfda7885378cf544b9c':
    "mutation RenamePerson($id: ID!, $name: String!, $was: String) { renamePerson(id: $id, name: $name, was: $was) { id name } }",
  'sha256:36d29b3ee920f4ccd394c961fd4dc15d28808b3b4dc3a1549eaf00e69d15989d':
    "mutation RenewPassword($id: ID!, $password: String!) { renewPassword(id: $id, password: $password) }",
  'sha256:eb9432c935dfa6c5957cf5aa1e87e732f3ca3ad14848c27f91414b20963ab13c':
    "mutation DisablePerson($id: ID!) { disablePerson(id: $id) }",
  'sha256:282d6af438bba31fb9f788acb0bc3fcf101591ede3385e16416a74f1f3a15053':
    "mutation EnablePerson($id: ID!) { enablePerson(id: $id) }",
  'sha256:4937c709c6b63a321480b3141ea787e816fc9c75353a1ebf8047451f8a3d349d':
    "mutation ChangeRole($id: ID!, $role: String!, $was: String) { changeRole(id: $id, role: $role, was: $was) }",
  'sha256:7003b4c1034684e7ae67eae5761be21005121330635fa8c114a47f409925981c':
    "mutation ProposeOfficer($id: ID!) { proposeOfficer(id: $id) }",
  'sha256:d1766cf2dcc2b1d878cb136d2fb3b57f5374776f32091ab28bf016a6c4681a64':
    "mutation AnswerProposal($accept: Boolean!, $id: ID!, $password: String) { answerProposal(id: $id, accept: $accept, password: $password) }",
  'sha256:9077e85caadadf2431b4777d2cb9769d367fffa05ac597fbdfa6e56999b60558':
    "mutation RemovePerson($id: ID!) { removePerson(id: $id) }",
  'sha256:b5909854e7dd79e7333749dc71bd50d65dbd1bc82c76e6841b25b5096a76b54b':
    "query Sessions { sessions { address device id isThis openedAt seenAt } }",
  'sha256:1c81fad18d0486bbb96e6b82241d69fea94227f3074a9f39eef6fdb3ae3aef4b':
    "mutation EndSessions($id: ID) { endSessions(id: $id) }",
  'sha256:50c112989642d818ebad151e43eb9b23197e4992eb1ee688501e06b70db23ae2':
    "mutation SetUp($code: String!, $people: FirstPeopleInput!) { setUp(code: $code, people: $people) }",
  'sha256:62414c1ad5074eb2c0d89abcdcafa41fd96b47fabb7939af78667755f55cbc2b':
    "mutation SignIn($email: String!, $password: String!) { signIn(email: $email, password: $password) { __typename ... on Account { id } ... on SignInRefusal { sentence } } }",
  'sha256:68315d7c7056b80aedac55cc10056dc47fe511577ac76bbc36e354a463bb4631':
    "query ToSetUp { isToSetUp }",
  'sha256:90af7ace45e05c4807b2d80e78fcc9ea3cc31c0834f2c2a6c35ca09caf586834':
    "mutation FirstPassword($next: String!) { changePassword(old: \"\", next: $next) }",
  'sha256:932aed9b141eeeb57572a4ef50ec016f807c015b3398c0b39094cb7f25835968':
    "query Beginning { beginningOfHouse { approvedSystems examinationRules hangs items { count kind } loadRules models { count kind } officers plans systems tours waiting warehouse } }",
  'sha256:27109c13e4003c663eda18d8a7584883abcf4e61c83e0ba168cdcbb39a1e3f34':
    "mutation DoMove($box: String!, $from: String!, $planId: ID!, $to: String!) { doMove(planId: $planId, box: $box, from: $from, to: $to) }",
  'sha256:578d32a728fffc68ebe2a4ad9f6a515527622bdda5867fb02ef7a542e45613b0':
    "mutation UndoMove($box: String!, $from: String!, $planId: ID!, $to: String!) { undoMove(planId: $planId, box: $box, from: $from, to: $to) }",
  'sha256:ab80f255593c6524a08b1700fa445d0c44e1e0262f210ab14b6b94e3bf0addab':
    "query WorkList($planId: ID!) { workList(planId: $planId) }",
  'sha256:dabd24999ade6d376542885a1d517c431406d2f97af4dad25dbe4802c6087baf':
    "mutation SetStack($cart: ID!, $serials: [String!]!) { setStack(cart: $cart, serials: $serials) { summary { id } } }",
  'sha256:478e6a781a0135c422f8cb21969c0091fd98f1ab76aa2ca38894fc82a167aa57':
    "query CountSheet($showId: ID!, $tourId: ID!) { countSheet(tourId: $tourId, showId: $showId) { lines { counted { countedAt countedBy damaged id losses returned sent } fitted item key learned { losses posteriorMean priorMean sparesByPriorAlone uses } spares } name notCountedBefore { name showId } records { corrects countedAt countedBy damaged id inForce key losses reason returned sent shows uses } showId tourId tourName } }",
  'sha256:36ed7032eda4ff89be04cb99d6bc7db460b0b7224294cd710080a77969d9e929':
    "mutation RecordCounts($lines: [CountInput!]!, $showIds: [ID!]!, $tourId: ID!) { recordCounts(tourId: $tourId, showIds: $showIds, lines: $lines) { __typename ... on CountRefusal { sentence } ... on CountSheet { showId } } }",
  'sha256:815d471aae26610fe69ce8f7c0169f78b848a8a7108232b39e43c526438bd268':
    "mutation CorrectCount($damaged: Int!, $id: ID!, $reason: String!, $returned: Int!, $sent: Int!) { correctCount( id: $id sent: $sent returned: $returned damaged: $damaged reason: $reason ) { showId } }",
  'sha256:a760d567948a7ec21bd923601f0790b14a1fe36986d77a4600668b708c5d53dc':
    "mutation TakeCountBack($id: ID!, $reason: String!) { takeCountBack(id: $id, reason: $reason) { showId } }",
  'sha256:1c76bdb66cd00946f2962936416a5f3278ec4bda346ff6e5d4982ce78113d730':
    "query Dates($after: String, $days: Int, $depot: String, $first: Int, $kind: String, $tour: String) { examinedItems( first: $first after: $after depot: $depot tour: $tour kind: $kind days: $days ) { edges { node { count dueOn dueState id kind model place state } } pageInfo { endCursor hasNextPage } } }",
  'sha256:0067485ee456dcfc0e9e03a0b5d2998870466f33d350ace1b7be08a65e692a7c':
    "query DatesChoices { depots tours(first: 200) { edges { node { id name } } } }",
  'sha256:d3eaf507facfeb9ba5e8d08886c07f4820b0b88a3e3c1ec1a340f88ee62445f9':
    "query Proposals($after: String) { proposals(first: 50, after: $after) { edges { node { figures { name wanted was } id isOwn itemId kind proposedAt proposedBy reason sentence subject } } holdsOwn newest pageInfo { endCursor hasNextPage } totalCount } }",
  'sha256:b9194e11d65c40238bf02f1462c96510481b2fae4b54f7c1aa046f5be12fda07':
    "query HowManyWait { proposals(first: 1) { totalCount } }",
  'sha256:56caee81555e25202749ebba8f1821ba112907a56463b469723be568dbb6b74c':
    "query WaitsOfItem($id: ID!) { proposalsOfItem(itemId: $id) { figures { name wanted was } id kind proposedBy sentence subject } }",
  'sha256:09c37341b7bc393ca2a8104b5fccac7ddf140a641ecd58d57b9569a928faf4a3':
    "query WaitsOfCatalogue { proposalsOfCatalogue { figures { name wanted was } id kind proposedBy sentence subject } }",
  'sha256:d5d47d5a8d5ce37a78f3ffc08f170afd7549df973cc3c1e07f8257d8919e0c02':
    "mutation AnswerProposals($accept: Boolean!, $ids: [ID!], $reason: String!, $through: ID) { answerProposals(ids: $ids, through: $through, accept: $accept, reason: $reason) }",
  'sha256:fdeb487e6626a2216cebc7efc8296d9a93b0ec9d5131a5e4a2aadcbcb963e685':
    "mutation AnswerAllProposals($accept: Boolean!, $reason: String!, $through: ID!) { answerAllProposals(through: $through, accept: $accept, reason: $reason) { id } }",
  'sha256:6b45a331343035867245baf1d510e16b912e3af5e0fa4d902344b0e810253e1b':
    "query ProposalAnswering { latestProposalAnswering { accept answered askedBy id isGoing leftBecause looked reason seconds total } }",
  'sha256:cf36d081c007d979c7211240951a65dba3e9e92b9e33ec474926180ef02103c2':
    "query ShowsToServe { tours(first: 100) { edges { node { id name showNames { name showId } } } } }",
  'sha256:be9c25588219a6460e1f20d50c59e9b5531fec7991598c246746dd571582feb5':
    "query FirstDayFor($days: Int!, $from: String!, $showId: ID!, $tourId: ID!) { firstDayFor(tourId: $tourId, showId: $showId, from: $from, days: $days) }",
  'sha256:cf67da107fcdefc6c3d974b2efc7330515ca6859126c961eea0c35bae6fead19':
    "query FleetCalendar($days: Int!, $depot: String, $from: String!) { depots fleetCalendar(from: $from, days: $days, depot: $depot) { count days { day free out promised short } model } }",
  'sha256:16fb64103875deb4ad9f91f70aa98e0bc576622c66aed86d9a518718128188fa':
    "query Remedies($day: String!, $depot: String, $model: String!) { remedies(model: $model, day: $day, depot: $depot) { kind sentence serial } }",
  'sha256:1884b6802a24578966a13a8e7b0ea43d2e9d445ba255cdb0b842d5a9151ed882':
    "query OpenHolds { openHolds { barred from id items name to until } }",
  'sha256:e89ec08f20ede4491cd8fdc9dcf190f06a7489a66134e034b57e5d718e396d2c':
    "mutation PlaceHold($hold: HoldInput!) { placeHold(hold: $hold) { __typename ... on BookingRefusal { sentence } ... on Hold { id } } }",
  'sha256:9460f9d436f643d0deb842d927d835552966d93f8a4204cb71c037aaae970c19':
    "mutation GiveHoldBack($id: ID!) { giveHoldBack(id: $id) }",
  'sha256:8761ba3c516a02ac279d235f325a6f1104f066c8ae7330f43f9e1eea0334cb51':
    "query FaultSheet($itemId: ID!) { faultSheet(itemId: $itemId) { count faults { by kind moment pieces then what } fliesIn { cart from load show showId tourId } id kind model spare state } }",
  'sha256:8eb221389f59a22e6f6950570e632571fb7b3659a5bbdd1b82736d74c561fc01':
    "query OpenFaults($planId: ID!) { openFaults(planId: $planId) { by item kind moment pieces then what } }",
  'sha256:50556aaddf916639edcc20c2b192c9f855798f97e0a9f1af85c5e6fd725cc5fa':
    "mutation ReportFault($itemId: ID!, $kind: String!, $pieces: Int, $then: String!, $what: String!) { reportFault( itemId: $itemId kind: $kind what: $what then: $then pieces: $pieces ) { id } }",
  'sha256:9f0fdeeb38f6a0ee66cdadb2b7cfd3064a092f6cfcc842a0cea7a554cc622627':
    "query FloorCode($code: String!, $planId: ID!) { floorCode(planId: $planId, code: $code) { count id kind model wantedSerials whyNot } }",
  'sha256:20fe756420c00759488a39b2b7c4f6f2d59c73f7064435c16e9853fb88083e3c':
    "query PrepSheet($planId: ID!) { prepSheet(planId: $planId) { records { agrees by data item kind moment } uses { count depot id inside kind model } } }",
  'sha256:9c4cf2721f6444aa5cc8cc189aa0471159c979bcc82d0e8aad5b17faf4865429':
    "mutation BenchTest($failed: [String!]!, $itemId: ID!, $planId: ID!, $remark: String!) { benchTest(planId: $planId, itemId: $itemId, failed: $failed, remark: $remark) }",
  'sha256:e8972322d4a6fcdee7afa8c2d98fcde048fab5513830d0aa79c29f7e3fd4a3fe':
    "mutation ReadSplays($load: String!, $planId: ID!, $splays: [Float!]!) { readSplays(planId: $planId, load: $load, splays: $splays) }",
  'sha256:cdd02e54a6050852e62376f715feb2e4f2499dc664afab1b3105a7ab33d7573b':
    "mutation CountTrunk($counts: [CountedInTrunk!]!, $planId: ID!, $trunk: ID!) { countTrunk(planId: $planId, trunk: $trunk, counts: $counts) }",
  'sha256:bfac7486067906a0efb9d58757d4bc79dc2f684ff9d334e9e1698986dab62bee':
    "query ReturnSheet($planId: ID!) { returnSheet(planId: $planId) { back { by moment } cart id kind load model seen { by moment place with } slot } }",
  'sha256:f09b82eb14a65dbd0bf47d78bd88e6a167962bc6817b732a14893ca9ea6eac14':
    "mutation ReturnCart($cart: ID!, $planId: ID!, $serials: [ID!]!) { returnCart(planId: $planId, cart: $cart, serials: $serials) { id } }",
  'sha256:2d6568cbb3ee0258f00529f533458f72f3183a9890e38ad199671699d6632e15':
    "mutation ReturnItems($items: [ID!]!, $planId: ID!) { returnItems(planId: $planId, items: $items) { id } }",
  'sha256:7e014f0960d3b031887ee06be21203371419d4b6bc5b0d3feea0c7bb9b5670c9':
    "query HangModels { catalogueModels { data kind model } }",
  'sha256:0d1173de3b89363f5be2c60daf68074f1f00f3cc5da957736be0744d56a49e4f':
    "mutation AddLoadReading($hang: String!, $hole: String!, $place: String!, $planId: ID!, $readingKg: Float!) { addLoadReading( planId: $planId hang: $hang hole: $hole place: $place readingKg: $readingKg ) { readings { id } } }",
  'sha256:64c56a0f6deb02ab4279c6a3625ac450888286a205065e9e673f9ad023bff482':
    "query RiggingRecord($planId: ID!) { riggingRecord(planId: $planId) { readings { hang hole id place readAt readBy readingKg sentence verdict } signOffs { company hang id kind name place remark role signedAt signedBy } } }",
  'sha256:1a8c6ea955b7c59e5eaa3175aba53af8b343bdd763d40f2d883db04a0014710f':
    "mutation SignOff($hang: String!, $kind: String!, $name: String!, $outside: OutsideInput, $planId: ID!, $remark: String!) { signOff( planId: $planId hang: $hang kind: $kind name: $name remark: $remark outside: $outside ) { signOffs { id } } }",
  'sha256:c911255f5a9d978d840eabb6d3051355368cc157a4201e988edb6ecc23a0c195':
    "query HouseState { houseState { connections connectionsLimit connectionsOfOne databaseBytes diskFreeBytes eventLoopMs faults grownSince jobsFailed jobsRunning jobsWaiting lastBackup oldestWaits plans { count kind seconds } processes requests sizes { bytes day } tables { bytes changedInMonth grownBytes name rows } turnedAway upSince version } }",
  'sha256:d17b522a623a85f761212e5522775c1f45d9d94f0e40fd28f93debcdae60e4f9':
    "query InspectedItems($after: String, $depots: [String!], $ids: [ID!], $kinds: [String!]) { inspectedItems(ids: $ids, kinds: $kinds, depots: $depots, after: $after) { hasMore items } }",
  'sha256:8f4e84d51dd2dbb117cff7de522e6714f410eb5566f3d77e596407306176a854':
    "query RulesAndSeal { logSeal { head lines sealedAt } rules }",
  'sha256:379c3237cb16f4f8e12ebe4369e2db32046a71a3c7a5c7c329b70ed6f26ceac2':
    "query SignOffs($planId: ID!) { riggingRecord(planId: $planId) { signOffs { company hang kind name place remark role signedAt signedBy } } }",
  'sha256:f0086dc625e5cf569d4e886c51a39e7b99bb7a85c2180d1565da1af7390fbfea':
    "query ReportOfItem($after: String, $id: ID!) { item(id: $id) { records(first: 50, after: $after) { edges { node { examination file { name sha256 } id kept lines reason recordedAt recordedBy } } pageInfo { endCursor hasNextPage } } } }",
  'sha256:7032afdeb732daef8af4d93b5c3d9cd66e5722c69929dc3f52cd375e0942e51a':
    "query LabelItems($after: String, $kind: String, $search: String, $serials: [ID!]) { items( search: $search kind: $kind serials: $serials first: 200 after: $after ) { edges { node { id kind model } } isMoreThanCounted pageInfo { endCursor hasNextPage } totalCount } }",
  'sha256:25bd9f537b71809c02d13f7aaf1e8ee28b68dc217b40d4dd5b42ff315dc9f64b':
    "query LentKit { lentKit { barredBy count depot itemId kind lent model owner } }",
  'sha256:860b70f72849d6b21df5a5ab0a3381670a34af4ad6cabff136dde09cbc1840b8':
    "mutation TakeInLentKit($kit: LentKitInput!) { takeInLentKit(kit: $kit) { itemId waits } }",
  'sha256:1d95f68ea67b16ff16a93fb1fcc1827c1f7338c847aad98688aee54174512865':
    "mutation ClearLentPaper($itemId: ID!, $reason: String!) { clearLentPaper(itemId: $itemId, reason: $reason) }",
  'sha256:c6dbb41c2dd76ee8bf25fa9f4246f914be0d49bd8bc1dd295dd48f4ac78c40c0':
    "mutation GiveBackLentKit($condition: String!, $itemId: ID!, $on: String!) { giveBackLentKit(itemId: $itemId, on: $on, condition: $condition) }",
  'sha256:97bef0f71482d5af4d7a425c20f112836a707e289fd5f12c995da07b7b65d426':
    "query ModelsToTakeIn { catalogueModels { kind model } }",
  'sha256:e06a1dfbd8e8798a4e657732c0bbdc44d7061492bbd82530df3e5f138016a8ff':
    "query LogLines($act: ID, $after: String, $day: String, $item: ID, $person: ID, $tour: ID, $zone: String) { log( act: $act item: $item tour: $tour person: $person day: $day zone: $zone first: 50 after: $after ) { edges { node { id itemId moreRows rows { after before key table } sentence showId tourId tourName } } pageInfo { endCursor hasNextPage } } }",
  'sha256:e7f888a113ae25baa9b9839230dea7d633fae412027af38e0b97d95f37765f48':
    "query LogPeople { people { id name } }",
  'sha256:10c68ae46dcfb1edd8bed74ed4d06ffd8289e3bf1e7e7c68e6089a0117f71050':
    "query LogTours { tours(first: 200) { edges { node { id name } } } }",
  'sha256:df68260e22c905f8506049a6b92741fcc96461292db69dc31c2c28d23e99fc89':
    "query LogActs($after: String, $day: String, $item: ID, $person: ID, $tour: ID, $zone: String) { logActs( item: $item tour: $tour person: $person day: $day zone: $zone first: 40 after: $after ) { edges { node { id isMoreThanCounted line { at doneAt id itemId moreRows rows { after before key table } sentence showId tourId tourName who } lines } } pageInfo { endCursor hasNextPage } } }",
  'sha256:ed07d17656e93fc208ef7cd2a845e6c225d1ae5aea06aaa01cafc84240902ceb':
    "query LogSeal { logSeal { head lines sealedAt } }",
  'sha256:b92a3cefda601ce266da0222fb9a595297665cde925a754e36925d7a68aa2018':
    "query BarredNow($id: ID!) { plan(id: $id) { barred { hangs itemId loads reason sentence } doneAlthoughBarred { hang id seen sentence tourId what } flying { hang inCharge name } } }",
  'sha256:0bd38339d7e4cfa5e592cc3f6ce2a43c65f63f911b06b00a9a8604176e17f53c':
    "query ShowPage($showId: ID!, $tourId: ID!) { showPage(tourId: $tourId, showId: $showId) { draft { changed { code sentence } hangs id madeAt madeBy releasedAt releasedBy releasedDespite revision show { from name number of to venue } state trucks } name released { changed { code sentence } hangs id madeAt madeBy releasedAt releasedBy releasedDespite revision show { from name number of to venue } state trucks } revisions { id releasedAt releasedBy revision state } showId tourId tourName } }",
  'sha256:0d8ddef1588b3c263010435a88591e32c0eec22faeabc0fd9bf48e99f4d8c52e':
    "query PlanProgress($id: ID!) { plan(id: $id) { cartChecks { checkedBy load } tickRemarks { by remark what } ticks } }",
  'sha256:792bbe693cbdda83038cb7ab084c50bdf834a1c70972e5800db2ae0f68fd221e':
    "query PlanFindings($id: ID!) { plan(id: $id) { findings { code date fact section sentence subject weight } } }",
  'sha256:3d42b5a6e7e349d574cd839032c7dbc6d1bd624235831f7a7148dece2026d1d0':
    "query PlanCarts($id: ID!) { plan(id: $id) { carts } }",
  'sha256:0e6d7182f5f486b6999aaadad3a2183e80f0c59e50d1c28724943a73758ef752':
    "query PlanPicks($id: ID!) { plan(id: $id) { picks } }",
  'sha256:9a78020a980282c1353842f24e6690176d3e910ad1a8618801fcdccefb125582':
    "query PlanHang($hang: String!, $id: ID!) { plan(id: $id) { hang(hang: $hang) } }",
  'sha256:85c12e29f285d82a740f2a59d1c0be9b9058e7dc59bd01988da5812c0f522d1d':
    "query PlanHardware($id: ID!) { plan(id: $id) { hardware } }",
  'sha256:d0f3771b1d1ba12abebe4c6f51a9b8a66b7558571eb6421ebed2a609705e4c4e':
    "query PlanTruckHead($id: ID!) { plan(id: $id) { truckHead } }",
  'sha256:2c34e954acb38532465ecd8c4dddb829784a8fa120432324d53f4af3a1672fed':
    "query PlanTruck($id: ID!, $truck: String!) { plan(id: $id) { truck(truck: $truck) } }",
  'sha256:b293e30295be71cf0fc254744c11a5663ac5be179c713dc09a30bedd87e73540':
    "query PlanDue($id: ID!) { plan(id: $id) { due } }",
  'sha256:1df863940a01bae19317515c84ccc95b70430eceadbc65d47815275477599769':
    "query WholePlan($id: ID!) { plan(id: $id) { plan } }",
  'sha256:40b71e5053ae1736087ef043c21dd3acb1741cb16e4cc917472d0a5695338fd4':
    "mutation MakePackPlan($showId: ID!, $tourId: ID!) { makePackPlan(tourId: $tourId, showId: $showId, waitMs: 800) { __typename ... on JobUnderWay { job { id progress state } } ... on PlanMade { planId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:507d8bc0976ca21e6fef45390742bd45317ad85f3bbbd8357b0178822dcf790d':
    "mutation ReleasePackPlan($countersign: CountersignInput, $despite: String, $planId: ID!) { releasePackPlan(planId: $planId, despite: $despite, countersign: $countersign) { __typename ... on BookingRefusal { clashes { from item to tour } code sentence } ... on PlanView { id revision } ... on StaleRefusal { changed { code sentence } code sentence } ... on StopRefusal { code needsOfficer sentence stops { code sentence } } } }",
  'sha256:a475f181dbec80fdc605fea1316e842bdff1c1c5f0fd133253b41a030e31629a':
    "query PlanDifference($from: ID!, $to: ID!) { planDifference(from: $from, to: $to) { boxes { from hang position to } hangsChanged sentences } }",
  'sha256:41a01d7dc9b47443b8a9c07a6fdebc67993f67d3edcd0ccf8317357b151516fa':
    "mutation Tick($done: Boolean!, $planId: ID!, $remark: String, $what: String!) { tick(planId: $planId, what: $what, done: $done, remark: $remark) { id } }",
  'sha256:7c2b611e90cf1dbff37d1f90f73751995ed918d619b31f6934968b34fe583508':
    "mutation ConfirmCart($load: String!, $planId: ID!, $serials: [String!]!) { confirmCart(planId: $planId, load: $load, serials: $serials) { agrees barred { itemId sentence } slots { agrees code expected found sentence slot } } }",
  'sha256:9c1f38f2625261bbc4863d7be76eba5bcae2f10de7781862c98a7bd7f2328111':
    "mutation SeeBarredAct($because: String!, $id: ID!, $tourId: ID!) { seeBarredAct(tourId: $tourId, id: $id, because: $because) }",
  'sha256:c6b3c49a8146fc613045b047c328b8c764cbd8b9af8bbcef92c8876f5a75df69':
    "mutation RecordExamination($examination: AnyJson!, $itemId: ID!, $reason: String, $supersedes: ID) { recordExamination( itemId: $itemId examination: $examination supersedes: $supersedes reason: $reason ) { summary { dueOn id } } }",
  'sha256:f873caa3162441edc93ca14f8ed3b8b9ba539e03ae8914bb1ec8ee81c9d976fd':
    "query ExaminationRulesOnFile { rules }",
  'sha256:568c5dc257415f523cdc4cd0f06d92c4c380775d9d358f477993f7ed5b0ab039':
    "query ItemRecords($after: String, $id: ID!) { item(id: $id) { records(first: 20, after: $after) { edges { node { examination file { id name sha256 sizeBytes type } id kept lines reason recordedAt recordedBy supersededBy supersedes } } pageInfo { endCursor hasNextPage } } } }",
  'sha256:29d9d66c08ae2188e158aabc81b43adf3c89fdac6a8cdcca59c54f843388b93c':
    "query ItemHistory($after: String, $id: ID!) { item(id: $id) { history(first: 20, after: $after) { edges { node { at sentence what who } } pageInfo { endCursor hasNextPage } } } }",
  'sha256:42d0438e0e6f4b095b6f5aca4871e424c2aa88d6f3deb3cbbc74daf2c787b200':
    "query ItemPage($id: ID!) { item(id: $id) { item promises { count from to tour } summary { count depot dueOn dueState id kind model place state } } }",
  'sha256:1363815df604bf74303bc001daf5a27857157a21fe0dc4cdaae6e656c72ce6d0':
    "mutation Quarantine($itemId: ID!, $reason: String!) { quarantine(itemId: $itemId, reason: $reason) { summary { id state } } }",
  'sha256:ab78289b7d5641db1ffee6c651c74ad68ee068348b662c140895a4cb246a9c9a':
    "mutation ReleaseFromQuarantine($itemId: ID!, $reason: String!) { releaseFromQuarantine(itemId: $itemId, reason: $reason) { summary { id state } } }",
  'sha256:b8890e20d0a78f99f976fb8f1a96a386afec19576c667a945acd862bb9360ad4':
    "mutation RecordIncident($itemId: ID!, $on: String!, $what: String!) { recordIncident(itemId: $itemId, on: $on, what: $what) { summary { id } } }",
  'sha256:3f3dcc35ed12f2e5d01cf7f1955c24a063665ab8ad8b2ab67bc9e641809f9599':
    "mutation ChangeItems($cells: [CellInput!]!, $ids: [ID!]!, $reason: String) { changeItems(ids: $ids, cells: $cells, reason: $reason) { __typename ... on ManyChanged { changed unchanged waits { id sentence } } ... on ManyRefusal { refused { column id value wanted } } } }",
  'sha256:3b57412c95ab93890750c8a7b1c108020deb484744d3afbeef3a2bada690b198':
    "query Items($after: String, $depot: String, $descending: Boolean, $kind: String, $model: String, $search: String, $sort: String, $state: String) { items( search: $search kind: $kind state: $state model: $model depot: $depot sort: $sort descending: $descending first: 50 after: $after ) { edges { node { count depot dueOn dueState id kind model place state } } isMoreThanCounted pageInfo { endCursor hasNextPage } totalCount } }",
  'sha256:3fe92b88b5f53237098c80ddaa1a44b373faf5527ad4f000c50537c3f2efb225':
    "query RegisterDepots { depots }",
  'sha256:c8d6171d9e87e31391b334c2c032bb30b95a719902c7f70e63ba507b4bf0787c':
    "query LotSplits($itemId: ID!) { lotSplits(itemId: $itemId) { childId madeAt madeBy ofPieces parentId pieces reason state } }",
  'sha256:f35401ec765d248cb2b2893068418a1be95adeec4fb1524fd5644e7110ca30cf':
    "mutation SplitLot($itemId: ID!, $pieces: Int!, $reason: String!, $state: String!) { splitLot(itemId: $itemId, pieces: $pieces, state: $state, reason: $reason) { left taken } }",
  'sha256:346023f8d5cc789920d66caac3287ef64a47b958e8336bd3130769ba7beee4f5':
    "query Models { catalogueModels { data itemCount kind model } riggingSystems rules }",
  'sha256:9daefed815ceb476cb09cec759bb6643143edabde2c83f9b5c51aa8bf3e39283':
    "mutation CorrectSerial($itemId: ID!, $reason: String!, $serial: String!) { correctSerial(itemId: $itemId, serial: $serial, reason: $reason) { summary { id } } }",
  'sha256:fdb0e6ffaecdc0d95405e07b2986f20c751410a09175407cbdb0f1cad66c9926':
    "mutation SaveLoadRule($reason: String, $rule: ModelJson!, $was: ModelJson) { saveLoadRule(rule: $rule, was: $was, reason: $reason) }",
  'sha256:4cacaf84edf05d16afdd7fc4fa2730f49bd6755464c0f1327a879e0215ebfc5b':
    "mutation ApproveRiggingSystem($id: ID!) { approveRiggingSystem(id: $id) }",
  'sha256:eb5c8e57d3db7ad94806a054ef977ccdf1e2e0bd02191e850ad2ca123722882c':
    "mutation SaveRiggingSystem($system: ModelJson!, $was: ModelJson) { saveRiggingSystem(system: $system, was: $was) }",
  'sha256:bffd2f2e659706eb187da52e80fc5da40df2d4bb752641e6cdead3c8380edcac':
    "query WearRules { rules }",
  'sha256:469ff7238fcca1ce6f135e132fd07e2792dfaba44f8d71c5c0bc59f192aeba62':
    "mutation AddExaminationRules($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }",
  'sha256:3be4b3f460fdfd3610f0a00ac626f399468b47e40a950294429761d1d986490d':
    "mutation RemoveExaminationRule($reason: String!, $rule: ModelJson!) { removeExaminationRule(rule: $rule, reason: $reason) }",
  'sha256:c52e25bb70462b8590f60a0af6e22f8052c1b58b13afc6fde73e89d02d803792':
    "query ExaminationRuleEditions { examinationRuleEditions { id madeAt madeBy reason wanted was } }",
  'sha256:c8b57f86f930dcf481a75d23541381ece5b487d126eb8cd9307f173a39442444':
    "mutation AddExaminationRule($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }",
  'sha256:6cd666e4e2b1a9bab354c22b2dae874f3613dae53b5b0fd20c4ffa74d1e6e225':
    "mutation ChangeExaminationRule($reason: String!, $rule: ModelJson!, $was: ModelJson!) { changeExaminationRule(was: $was, rule: $rule, reason: $reason) }",
  'sha256:7801d6561847b0d9cc84a0816bc9593d07f8be618b0e58377d624b65c858900b':
    "query PlanImprovement($planId: ID!) { planImprovement(planId: $planId) { code sentence } }",
  'sha256:76584e61b1e665d86eb080bb927de4ea437112cf223da0e535a5dea4c483b061':
    "mutation TakeImprovement($planId: ID!) { takeImprovement(planId: $planId) { __typename ... on PlanMade { planId } ... on StaleRefusal { changed { sentence } sentence } } }",
  'sha256:644f8198e71037974abece13d8b91c2b6d11df36ca731bc0ee49a236e863aa9d':
    "query LatestSearch($showId: ID!, $tourId: ID!) { latestJob(kind: \"search\", tourId: $tourId, showId: $showId) { askedBy id progress sentence state } }",
  'sha256:54fd7141b1507a9cb9a1681744b80f39ee918725945c0b8576cdce1f971b7e45':
    "mutation StartSearch($showId: ID!, $tourId: ID!) { startSearch(tourId: $tourId, showId: $showId) { id state } }",
  'sha256:226c4b4af30e52ecd9755f28ae0771c264f18b4af1d47908a0991392d7d139c5':
    "mutation StopSearch($id: ID!) { cancelJob(id: $id) { id state } }",
  'sha256:e0ab6f8f23dfb05bb4cca7a98650a6de84bc0441021b7c57eb97ba99e4e08933':
    "query LatestMaking($showId: ID!, $tourId: ID!) { latestJob(kind: \"make\", tourId: $tourId, showId: $showId) { askedBy id progress state } }",
  'sha256:1cacc522c71f7daa25a9efc88104b6105c3e2ca379abde3f8b78e88ecd5a8eb2':
    "mutation StopMaking($id: ID!) { cancelJob(id: $id) { id state } }",
  'sha256:b90786034b5362960787a0cd599ca6bcd5cdc01b3168ca78f838705f5363466e':
    "mutation SwapBox($planId: ID!, $reason: String!, $serial: String!) { swapBox(planId: $planId, serial: $serial, reason: $reason, waitMs: 800) { __typename ... on JobUnderWay { job { id progress state } } ... on PlanningRefusal { code reasons sentence } ... on SwapResult { difference { sentences } draftId marked } } }",
  'sha256:3358d0b08eec17ac19433fdf502e85af5248891abe5968d8fdb8bc9b88623f9a':
    "query WhyHere($id: ID!, $load: String!, $slot: Int) { whyHere(planId: $id, load: $load, slot: $slot) { code sentence } }",
  'sha256:26385f9e8c25461faf7ab22f98323c3505fe00e0a10d8731c79faf54ea2768f9':
    "query Attention($after: String, $role: String!) { attention(role: $role, first: 30, after: $after) { edges { node { code date itemId sentence show showId subject tourId weight } } pageInfo { endCursor hasNextPage } plannedCount showCount totalCount } }",
  'sha256:bb6e11666baba833c6ac38ea88887c9df11dce632c3eb17b4af43482d9cdd38c':
    "query AnyTour { items(first: 1) { edges { node { id } } } tours(first: 1) { edges { node { id } } } }",
  'sha256:1d2353fa0428e59843bc2ab20e48b1f78965f94ae63e557f98e0996bf9ad5ec3':
    "query BetweenShows($tourId: ID!) { betweenShows(tourId: $tourId) { from to what } }",
  'sha256:e54a98ee87bc63bc9708d5580cd7bfdca2fdab9d97f90a20f133a71619fc9ee9':
    "query Tour($id: ID!) { showStates(tourId: $id) { looks revision showId state stops } tour(id: $id) { id removedShows { from name removedBy removedOn revisions showId to } tour version } }",
  'sha256:10f0feb20eb12e0cbca2ee7906a58f32bf50eaa4c344a45dd2693ece1f923c33':
    "mutation SaveTour($expectedVersion: Int, $tour: TourJson!) { saveTour(tour: $tour, expectedVersion: $expectedVersion) { id tour version } }",
  'sha256:8cc73176d4e56e53e107df84a6c985b97bed5093df1ccd63e0c7344c3ab3c62c':
    "query HouseRules { items(kind: \"truck\", first: 100) { edges { node { depot id model } } } rules }",
  'sha256:f99ff069eeb0df25e73e8365d59791d029d374e43f3a7392c55409a3688a3085':
    "query Tours($after: String) { tours(first: 50, after: $after) { edges { node { id name prepFrom returnTo shows } } pageInfo { endCursor hasNextPage } } }",
  'sha256:37329f9e1a81792205da3ce5148cb3261c147619980478257613aa1f71093969':
    "query TakenAlong($showId: ID, $tourId: ID!) { takenAlong(tourId: $tourId, showId: $showId) { boxes drafts givenBack hangs inForce revisions shows } }",
  'sha256:8df81131a25e8ddb002e15d804b14bffacf2fc1d711356d45e04ca00e441836d':
    "mutation RemoveShow($expectedVersion: Int!, $showId: ID!, $tourId: ID!) { removeShow(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }",
  'sha256:17fde708a456716d6c54a6cc20a1f04241eb6108940091202189ca3d53651b58':
    "mutation PutShowBack($expectedVersion: Int!, $showId: ID!, $tourId: ID!) { putShowBack(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }",
  'sha256:7b4d292119832be9ae061b6f69bedb6e2741126498907f845e68c242730a7ab8':
    "mutation RemoveTour($expectedVersion: Int!, $tourId: ID!) { removeTour(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }",
  'sha256:2fdd677bf97d5619a2f77038d8d888b43622405d1aaec93d7da0b8cba6c44454':
    "mutation PutTourBack($expectedVersion: Int!, $tourId: ID!) { putTourBack(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }",
  'sha256:ec551f90e852f0f83ae99b5c05ad63b32a995ce189b3917e598a357572379fce':
    "query RemovedTours { removedTours { id name prepFrom removedBy removedOn returnTo revisions version } }",
  'sha256:051cedfe19e776bf9dae24357402ef61f7705388c5d136e98095c6962543c007':
    "mutation ChooseVenue($showId: ID!, $tourId: ID!, $venueId: ID) { chooseVenue(tourId: $tourId, showId: $showId, venueId: $venueId) }",
  'sha256:0882246cdb5be03b72e93e23f1c5941649b632249c460247e30e35a4ffad34eb':
    "query ShowVenue($showId: ID!, $tourId: ID!) { venueOfShow(tourId: $tourId, showId: $showId) { id } venues { id venue } }",
  'sha256:1815de0fedfa8a227a4ab2a27df2c610b4360cdd6f9e891cb328dc1e2d1cfa5f':
    "query HardwareModels { catalogueModels { kind model } }",
  'sha256:effd8f732325d4f9b6ae0665eba428ed70bc2ed7c862c6c783c3d365302041f4':
    "query TravellingKit { trucks: items(kind: \"truck\", first: 100) { edges { node { id model } } } cases: items(kind: \"case\", first: 200) { edges { node { id model } } } }",
  'sha256:3368307989904a849c171c8e0ebe258e18cd420d108d54d5705c4d74ffbe4eea':
    "query TourPlaces($tourId: ID!) { tourPlaces(tourId: $tourId) { home places { decisions { because decidedAt decidedBy rulesOf } hasRules judgedBy place } ruled } }",
  'sha256:327c199f5e4e1ea1140765012c1c52989041ab299d065fb0e0ee116d4163b813':
    "mutation AnswerPlace($place: String!, $reason: String!, $rulesOf: String, $tourId: ID!) { answerPlace(tourId: $tourId, place: $place, rulesOf: $rulesOf, reason: $reason) { home } }",
  'sha256:d9b647bee78bbda1236ee213ef2364952f6a2119e6a516f603e0041a0a71f020':
    "query WholeTour($tourId: ID!) { wholeTour(tourId: $tourId) { madeAt madeBy plan } }",
  'sha256:85c226180cd8004a236c6089be78908cd24d630f4ed7cac55ca0d10c66a793ae':
    "mutation PlanWholeTour($depot: Float!, $dock: Float!, $fixedUntil: Int!, $tourId: ID!) { planWholeTour( tourId: $tourId depot: $depot dock: $dock fixedUntil: $fixedUntil waitMs: 800 ) { __typename ... on JobUnderWay { job { id progress state } } ... on PlanningRefusal { code reasons sentence } ... on TourPlanned { tourId } } }",
  'sha256:247a0dfcf536cd3c0ac45c5f817128f5dee3c09e54d4033526f39d514b7e31db':
    "query CsvImport($id: ID!) { csvImport(id: $id) { askedAt askedBy code dryRun id of outcome { added changed failed faults { column count first { row value } rows wanted } faulty firstAdded firstChanged { id what } firstFailed firstWaiting rows unchanged waiting } rowsChecked rowsDated rowsTotal rowsWritten seconds state step } }",
  'sha256:c0693cf1c2ab508bc1fda7ddd0f5d799ef13657d89e9d2b0c3bcd2580646951b':
    "query LatestCsvImports { latestCsvImports { askedAt askedBy dryRun id of rowsTotal seconds state } }",
  'sha256:2793cd21327f2eb9d569a67b67d2d1a978008e5feb708000353239252b73720a':
    "mutation CancelCsvImport($id: ID!) { cancelCsvImport(id: $id) { id state } }",
  'sha256:96918b13c235d89a28f0cf40ed46e1906fdcd0ace7b80d8705d182324c5e50a8':
    "mutation KeepRow($planId: ID!, $row: Int!, $truck: String!) { keepRow(planId: $planId, waitMs: 800, truck: $truck, row: $row) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:c37e2f99c86714443c93680f487078f839f0fb8a8774ee940acde6376816f235':
    "mutation KeepLoaded($planId: ID!) { keepLoaded(planId: $planId, waitMs: 800) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:9013964a97ea954f45a6580c23c5a3821b96bbc3f4817fda49a2a0f743037577':
    "mutation KeepPieces($pieces: [String!]!, $planId: ID!) { keepPieces(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:00f1d0f183df8e7f87177a7264a5fe85ebad4449aacf8b1e18acddd90b7eb6ca':
    "mutation LetPiecesGo($pieces: [String!], $planId: ID!) { letPiecesGo(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:b6a1bc3d688667e48c0942d79e76983d2b7c45a01de0fe7b48ca5f3f1fe4d6e9':
    "mutation WaiveOrder($piece: String!, $planId: ID!, $reason: String!) { waiveOrder(planId: $planId, waitMs: 800, piece: $piece, reason: $reason) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:391b12bfd11f75ec63a91fce1a1dcceb8466541558ca8c3c2f43a77c21fa040a':
    "mutation EndWaiver($piece: String!, $planId: ID!) { endWaiver(planId: $planId, waitMs: 800, piece: $piece) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:17853520d59bf6eac72d01f5947469a257e6d8a1555fc735c7800ebec12ddcfe':
    "mutation TakeCase($case: String!, $planId: ID!) { takeCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:9884373cc9263c72d5f6dde23a7df97f5d8d1a8d81ecf0353363459fdd65966f':
    "mutation LeaveCase($case: String!, $planId: ID!) { leaveCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:0fa3c0e6f12013908adb8f9edf744f927a0112196c13e2e75ee7b3d6e36297b0':
    "mutation SetGroupEnd($end: String, $group: String!, $planId: ID!) { setGroupEnd(planId: $planId, waitMs: 800, group: $group, end: $end) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:a7edb04f348b01389a4ca8e3b6486a2a960906c8594b2d76e6991d99890a45d1':
    "query RowSwap($first: Int!, $planId: ID!, $second: Int!, $truck: String!) { rowSwap(planId: $planId, truck: $truck, first: $first, second: $second) { axles { afterKg axle beforeKg limitKg } breaches { mayBeWaived piece sentence } first second sideAfterMm sideBeforeMm } }",
  'sha256:33b6d637575d02479d17f786b74f883bd5a5e8dd4e33840fcf3af2fb5e68d01c':
    "mutation SwapRows($first: Int!, $planId: ID!, $reason: String, $second: Int!, $truck: String!) { swapRows( planId: $planId waitMs: 800 truck: $truck first: $first second: $second reason: $reason ) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:6a4ece21adaf6d2bacf5dd3f47047b84cea578b107c73ea24c40734071e05c65':
    "mutation TakePieceAlong($piece: String!, $planId: ID!) { takePieceAlong(planId: $planId, piece: $piece, waitMs: 800) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:8fcc0c363dec7929715c60d58b0791fcd658ca554e13aad245b3b5c7a821a972':
    "mutation LeavePiece($piece: String!, $planId: ID!, $reason: String!) { leavePiece(planId: $planId, piece: $piece, reason: $reason, waitMs: 800) { __typename ... on JobUnderWay { job { id progress state } } ... on LoadingDone { changes draftId } ... on PlanningRefusal { code reasons sentence } } }",
  'sha256:f3383aeff96641530fd3070e365d4980eab3f468daf3a85954a0a58442539dab':
    "query Venues { venues { id shows { showId tourId } venue version } }",
  'sha256:44d1e78c330761e6e9acbe55048ed1cbf8403d1c441ee91d6a021e80bde4feaf':
    "mutation SaveVenue($expectedVersion: Int, $id: ID, $venue: VenueJson!) { saveVenue(id: $id, venue: $venue, expectedVersion: $expectedVersion) { id } }",
  'sha256:7f02ee851957506e066146b338139755f88e037eed37740b30dca66bac568aa0':
    "query Visits($depot: String, $from: String!, $to: String!) { depots showsInSeason(from: $from, to: $to) { from name showId to tourId } visits(from: $from, to: $to, depot: $depot) { depot entered id list onDay placeName remark state version } }",
  'sha256:e9ade6273d1f56f1f67093c559dec791dd327a640e8289c0efec8d5b51787bbc':
    "query VisitSeason($check: String, $depot: String, $from: String!, $to: String!, $withIdle: Boolean!, $without: [ID!]!) { visitSeason( from: $from to: $to depot: $depot withIdle: $withIdle without: $without check: $check ) { answer names { id kind model } without } }",
  'sha256:d43fdc9949d71ee8244b6aef1fa249f61e47eebfcfc6f9ea46c3315b1a8ad071':
    "query CountedUse($depot: String) { countedUse(depot: $depot) { basis count depot every isDue itemId jurisdiction kind model since } }",
  'sha256:77671ca2aec1c454bcb8f1d3214ca8e7a6e2e3bac605791a8dce3de72e861f15':
    "mutation AddVisitDays($days: [PossibleDayInput!]!) { addVisitDays(days: $days) }",
  'sha256:3ee97e672094fb4cc58d57270155e8f0e708df724f773a3213037bd43ce09ed7':
    "mutation AgreeVisits($depot: String, $from: String!, $to: String!, $visits: [ID!]!) { agreeVisits(from: $from, to: $to, depot: $depot, visits: $visits) }",
  'sha256:a02f56f7a95d1810cd85238117380a53cbf18dcbf3a342f01a404e5727026a9e':
    "mutation MoveVisit($expectedVersion: Int!, $id: ID!, $onDay: String!) { moveVisit(id: $id, onDay: $onDay, expectedVersion: $expectedVersion) }",
  'sha256:f6e80611a1298e26922c245a1619ce6c5903bd1d6b9c20d14ac896831ce0d30c':
    "mutation CancelVisit($expectedVersion: Int!, $id: ID!) { cancelVisit(id: $id, expectedVersion: $expectedVersion) }",
  'sha256:7918e1d1d031b18e5cc681bd85a24ec8cf632ec0541b58dcce9240974bb569a6':
    "query VisitList($id: ID!) { visitList(id: $id) { items { id intervals kind model place rules } lines { examinationId itemId outcome remark report } visit { entered id list onDay placeName state version } } }",
  'sha256:d900362f7b1f118a4020f920e980f1cee826fab9a4c08ae3ec0dacb09a6aba94':
    "mutation EnterVisitResults($examiner: String!, $id: ID!, $lines: [VisitResultInput!]!, $reportFile: ID) { enterVisitResults( id: $id examiner: $examiner reportFile: $reportFile lines: $lines ) { visit { entered } } }",
  'sha256:04bec53b266ae3e57722999d0126a593c72cb2caece43dce013ff04fe094bedd':
    "query OwnCalendars { ownCalendars { depot id madeAt } }",
  'sha256:f7151c62c298647e706ddd1f89fd00cbd916abb0aa2e36689d8b32ecd01fddd8':
    "mutation RenewCalendar($depot: String) { renewCalendar(depot: $depot) }",
  'sha256:598d16925e9b8920d542d1d16a5334f254eaa3d0dd74841adf9943e65a671bb2':
    "mutation WithdrawCalendar($id: ID!) { withdrawCalendar(id: $id) }",
  'sha256:4116ab0dfefa29de45f15aaa5bf1437cbe5bb53fd3f150066288d6a6e179452e':
    "query Me { me { deputyships { depot officer tourId until } id mustChange name onePerson { by endedBecause reason since until } role } }",
  'sha256:b66cbe67d8a09e230001cbe0df01a939b512da504ef52d8628357a69f60da81e':
    "query JobState($id: ID!) { job(id: $id) { id progress state } }",
  'sha256:c88f9c6acc552e463bd5669c81ceb2b1ccc3a1c9cb747f9e6de8929e654efac0':
    "mutation CancelJob($id: ID!) { cancelJob(id: $id) { id progress state } }",
  'sha256:83006205df3e6e10f14b50da4eebd6a5cbba54b068e0ed95e9a630306da86c09':
    "query RuledPlaces { rules }",
};
