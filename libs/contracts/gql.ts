/* eslint-disable */
import * as types from './graphql.js';



/**
 * Map of all GraphQL operations in the project.
 *
 * This map has several performance disadvantages:
 * 1. It is not tree-shakeable, so it will include all operations in the project.
 * 2. It is not minifiable, so the string of a GraphQL query will be multiple times inside the bundle.
 * 3. It does not support dead code elimination, so it will add unused operations.
 *
 * Therefore it is highly recommended to use the babel or swc plugin for production.
 * Learn more about it here: https://the-guild.dev/graphql/codegen/plugins/presets/preset-client#reducing-bundle-size
 */
type Documents = {
    "mutation SignOut { signOut }": typeof types.SignOutDocument,
    "\n  query Deputies {\n    deputies { id personId person officerId officer from until depot tour reason namedBy state }\n    people { id name role state passwordByOfficer }\n    tours(first: 100) { edges { node { id name } } }\n  }\n": typeof types.DeputiesDocument,
    "mutation NameDeputy($deputy: DeputyInput!) { nameDeputy(deputy: $deputy) }": typeof types.NameDeputyDocument,
    "mutation SignDeputy($id: ID!) { signDeputy(id: $id) }": typeof types.SignDeputyDocument,
    "mutation WithdrawDeputy($id: ID!) { withdrawDeputy(id: $id) }": typeof types.WithdrawDeputyDocument,
    "mutation SetOnePerson($isOn: Boolean!, $reason: String!) { setOnePerson(isOn: $isOn, reason: $reason) }": typeof types.SetOnePersonDocument,
    "query People { people { id name email role state sessions proposedBy } }": typeof types.PeopleDocument,
    "mutation AddPerson($person: PersonInput!) { addPerson(person: $person) { id } }": typeof types.AddPersonDocument,
    "mutation ChangePassword($old: String!, $next: String!) { changePassword(old: $old, next: $next) }": typeof types.ChangePasswordDocument,
    "mutation RenamePerson($id: ID!, $name: String!, $was: String) { renamePerson(id: $id, name: $name, was: $was) { id name } }": typeof types.RenamePersonDocument,
    "mutation RenewPassword($id: ID!, $password: String!) { renewPassword(id: $id, password: $password) }": typeof types.RenewPasswordDocument,
    "mutation DisablePerson($id: ID!) { disablePerson(id: $id) }": typeof types.DisablePersonDocument,
    "mutation EnablePerson($id: ID!) { enablePerson(id: $id) }": typeof types.EnablePersonDocument,
    "mutation ChangeRole($id: ID!, $role: String!, $was: String) { changeRole(id: $id, role: $role, was: $was) }": typeof types.ChangeRoleDocument,
    "mutation ProposeOfficer($id: ID!) { proposeOfficer(id: $id) }": typeof types.ProposeOfficerDocument,
    "mutation AnswerProposal($id: ID!, $accept: Boolean!, $password: String) { answerProposal(id: $id, accept: $accept, password: $password) }": typeof types.AnswerProposalDocument,
    "mutation RemovePerson($id: ID!) { removePerson(id: $id) }": typeof types.RemovePersonDocument,
    "query Sessions { sessions { id openedAt seenAt address device isThis } }": typeof types.SessionsDocument,
    "mutation EndSessions($id: ID) { endSessions(id: $id) }": typeof types.EndSessionsDocument,
    "mutation SetUp($code: String!, $people: FirstPeopleInput!) { setUp(code: $code, people: $people) }": typeof types.SetUpDocument,
    "\n  mutation SignIn($email: String!, $password: String!) {\n    signIn(email: $email, password: $password) { __typename ... on Account { id } ... on SignInRefusal { sentence } }\n  }\n": typeof types.SignInDocument,
    "query ToSetUp { isToSetUp }": typeof types.ToSetUpDocument,
    "mutation FirstPassword($next: String!) { changePassword(old: \"\", next: $next) }": typeof types.FirstPasswordDocument,
    "\n  query Beginning {\n    beginningOfHouse {\n      officers warehouse examinationRules loadRules systems approvedSystems models { kind count } items { kind count } waiting tours hangs plans\n    }\n  }\n": typeof types.BeginningDocument,
    "mutation DoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { doMove(planId: $planId, box: $box, from: $from, to: $to) }": typeof types.DoMoveDocument,
    "mutation UndoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { undoMove(planId: $planId, box: $box, from: $from, to: $to) }": typeof types.UndoMoveDocument,
    "query WorkList($planId: ID!) { workList(planId: $planId) }": typeof types.WorkListDocument,
    "mutation SetStack($cart: ID!, $serials: [String!]!) { setStack(cart: $cart, serials: $serials) { summary { id } } }": typeof types.SetStackDocument,
    "\n  query CountSheet($tourId: ID!, $showId: ID!) {\n    countSheet(tourId: $tourId, showId: $showId) {\n      tourId showId name tourName notCountedBefore { showId name }\n      lines {\n        key item fitted spares\n        learned { priorMean losses uses posteriorMean sparesByPriorAlone }\n        counted { id sent returned damaged losses countedBy countedAt }\n      }\n      records { id key shows sent returned damaged losses uses corrects reason countedBy countedAt inForce }\n    }\n  }\n": typeof types.CountSheetDocument,
    "\n  mutation RecordCounts($tourId: ID!, $showIds: [ID!]!, $lines: [CountInput!]!) {\n    recordCounts(tourId: $tourId, showIds: $showIds, lines: $lines) {\n      __typename\n      ... on CountSheet { showId }\n      ... on CountRefusal { sentence }\n    }\n  }\n": typeof types.RecordCountsDocument,
    "\n  mutation CorrectCount($id: ID!, $sent: Int!, $returned: Int!, $damaged: Int!, $reason: String!) {\n    correctCount(id: $id, sent: $sent, returned: $returned, damaged: $damaged, reason: $reason) { showId }\n  }\n": typeof types.CorrectCountDocument,
    "mutation TakeCountBack($id: ID!, $reason: String!) { takeCountBack(id: $id, reason: $reason) { showId } }": typeof types.TakeCountBackDocument,
    "\n  query Dates($first: Int, $after: String, $depot: String, $tour: String, $kind: String, $days: Int) {\n    examinedItems(first: $first, after: $after, depot: $depot, tour: $tour, kind: $kind, days: $days) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model place dueOn dueState state count } }\n    }\n  }\n": typeof types.DatesDocument,
    "query DatesChoices { depots tours(first: 200) { edges { node { id name } } } }": typeof types.DatesChoicesDocument,
    "\n  query Proposals($after: String) {\n    proposals(first: 50, after: $after) {\n      totalCount\n      newest\n      holdsOwn\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind subject itemId sentence proposedBy proposedAt reason isOwn figures { name was wanted } } }\n    }\n  }\n": typeof types.ProposalsDocument,
    "query HowManyWait { proposals(first: 1) { totalCount } }": typeof types.HowManyWaitDocument,
    "query WaitsOfItem($id: ID!) { proposalsOfItem(itemId: $id) { id kind subject sentence proposedBy figures { name was wanted } } }": typeof types.WaitsOfItemDocument,
    "query WaitsOfCatalogue { proposalsOfCatalogue { id kind subject sentence proposedBy figures { name was wanted } } }": typeof types.WaitsOfCatalogueDocument,
    "mutation AnswerProposals($ids: [ID!], $through: ID, $accept: Boolean!, $reason: String!) { answerProposals(ids: $ids, through: $through, accept: $accept, reason: $reason) }": typeof types.AnswerProposalsDocument,
    "mutation AnswerAllProposals($through: ID!, $accept: Boolean!, $reason: String!) { answerAllProposals(through: $through, accept: $accept, reason: $reason) { id } }": typeof types.AnswerAllProposalsDocument,
    "query ProposalAnswering { latestProposalAnswering { id accept reason askedBy isGoing total answered looked leftBecause seconds } }": typeof types.ProposalAnsweringDocument,
    "query ShowsToServe { tours(first: 100) { edges { node { id name showNames { showId name } } } } }": typeof types.ShowsToServeDocument,
    "\n  query FirstDayFor($tourId: ID!, $showId: ID!, $from: String!, $days: Int!) {\n    firstDayFor(tourId: $tourId, showId: $showId, from: $from, days: $days)\n  }\n": typeof types.FirstDayForDocument,
    "\n  query FleetCalendar($from: String!, $days: Int!, $depot: String) {\n    depots\n    fleetCalendar(from: $from, days: $days, depot: $depot) { model count days { day free promised out short } }\n  }\n": typeof types.FleetCalendarDocument,
    "query Remedies($model: String!, $day: String!, $depot: String) { remedies(model: $model, day: $day, depot: $depot) { serial kind sentence } }": typeof types.RemediesDocument,
    "query OpenHolds { openHolds { id name from to until items barred } }": typeof types.OpenHoldsDocument,
    "\n  mutation PlaceHold($hold: HoldInput!) {\n    placeHold(hold: $hold) { __typename ... on Hold { id } ... on BookingRefusal { sentence } }\n  }\n": typeof types.PlaceHoldDocument,
    "mutation GiveHoldBack($id: ID!) { giveHoldBack(id: $id) }": typeof types.GiveHoldBackDocument,
    "\n  query FaultSheet($itemId: ID!) {\n    faultSheet(itemId: $itemId) {\n      id kind model state count spare\n      faults { kind what then pieces moment by }\n      fliesIn { tourId showId show from load cart }\n    }\n  }\n": typeof types.FaultSheetDocument,
    "query OpenFaults($planId: ID!) { openFaults(planId: $planId) { item kind what then pieces moment by } }": typeof types.OpenFaultsDocument,
    "\n  mutation ReportFault($itemId: ID!, $kind: String!, $what: String!, $then: String!, $pieces: Int) {\n    reportFault(itemId: $itemId, kind: $kind, what: $what, then: $then, pieces: $pieces) { id }\n  }\n": typeof types.ReportFaultDocument,
    "query FloorCode($planId: ID!, $code: String!) { floorCode(planId: $planId, code: $code) { id kind model count whyNot wantedSerials } }": typeof types.FloorCodeDocument,
    "query PrepSheet($planId: ID!) { prepSheet(planId: $planId) { uses { id kind model count depot inside } records { item kind agrees data moment by } } }": typeof types.PrepSheetDocument,
    "mutation BenchTest($planId: ID!, $itemId: ID!, $failed: [String!]!, $remark: String!) { benchTest(planId: $planId, itemId: $itemId, failed: $failed, remark: $remark) }": typeof types.BenchTestDocument,
    "mutation ReadSplays($planId: ID!, $load: String!, $splays: [Float!]!) { readSplays(planId: $planId, load: $load, splays: $splays) }": typeof types.ReadSplaysDocument,
    "mutation CountTrunk($planId: ID!, $trunk: ID!, $counts: [CountedInTrunk!]!) { countTrunk(planId: $planId, trunk: $trunk, counts: $counts) }": typeof types.CountTrunkDocument,
    "query ReturnSheet($planId: ID!) { returnSheet(planId: $planId) { id kind model cart slot load back { moment by } seen { moment by with place } } }": typeof types.ReturnSheetDocument,
    "mutation ReturnCart($planId: ID!, $cart: ID!, $serials: [ID!]!) { returnCart(planId: $planId, cart: $cart, serials: $serials) { id } }": typeof types.ReturnCartDocument,
    "mutation ReturnItems($planId: ID!, $items: [ID!]!) { returnItems(planId: $planId, items: $items) { id } }": typeof types.ReturnItemsDocument,
    "query HangModels { catalogueModels { kind model data } }": typeof types.HangModelsDocument,
    "\n  mutation AddLoadReading($planId: ID!, $hang: String!, $hole: String!, $place: String!, $readingKg: Float!) {\n    addLoadReading(planId: $planId, hang: $hang, hole: $hole, place: $place, readingKg: $readingKg) { readings { id } }\n  }\n": typeof types.AddLoadReadingDocument,
    "\n  query RiggingRecord($planId: ID!) {\n    riggingRecord(planId: $planId) {\n      readings { id hang hole place readingKg readAt readBy verdict sentence }\n      signOffs { id hang kind name remark company role place signedAt signedBy }\n    }\n  }\n": typeof types.RiggingRecordDocument,
    "\n  mutation SignOff($planId: ID!, $hang: String!, $kind: String!, $name: String!, $remark: String!, $outside: OutsideInput) {\n    signOff(planId: $planId, hang: $hang, kind: $kind, name: $name, remark: $remark, outside: $outside) { signOffs { id } }\n  }\n": typeof types.SignOffDocument,
    "query HouseState { houseState { version upSince databaseBytes tables { name bytes rows changedInMonth grownBytes } sizes { day bytes } grownSince connections connectionsLimit connectionsOfOne lastBackup jobsWaiting jobsRunning jobsFailed oldestWaits plans { kind count seconds } requests turnedAway faults eventLoopMs diskFreeBytes processes } }": typeof types.HouseStateDocument,
    "\n  query InspectedItems($ids: [ID!], $kinds: [String!], $depots: [String!], $after: String) {\n    inspectedItems(ids: $ids, kinds: $kinds, depots: $depots, after: $after) { items hasMore }\n  }\n": typeof types.InspectedItemsDocument,
    "query RulesAndSeal { rules logSeal { head lines sealedAt } }": typeof types.RulesAndSealDocument,
    "\n  query SignOffs($planId: ID!) { riggingRecord(planId: $planId) { signOffs { hang kind name remark company role place signedAt signedBy } } }\n": typeof types.SignOffsDocument,
    "\n  query ReportOfItem($id: ID!, $after: String) {\n    item(id: $id) {\n      records(first: 50, after: $after) {\n        pageInfo { hasNextPage endCursor }\n        edges { node { id examination recordedBy recordedAt reason file { name sha256 } kept lines } }\n      }\n    }\n  }\n": typeof types.ReportOfItemDocument,
    "\n  query LabelItems($search: String, $kind: String, $serials: [ID!], $after: String) {\n    items(search: $search, kind: $kind, serials: $serials, first: 200, after: $after) {\n      totalCount isMoreThanCounted\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model } }\n    }\n  }\n": typeof types.LabelItemsDocument,
    "query LentKit { lentKit { itemId kind model count depot owner lent barredBy } }": typeof types.LentKitDocument,
    "mutation TakeInLentKit($kit: LentKitInput!) { takeInLentKit(kit: $kit) { itemId waits } }": typeof types.TakeInLentKitDocument,
    "mutation ClearLentPaper($itemId: ID!, $reason: String!) { clearLentPaper(itemId: $itemId, reason: $reason) }": typeof types.ClearLentPaperDocument,
    "mutation GiveBackLentKit($itemId: ID!, $on: String!, $condition: String!) { giveBackLentKit(itemId: $itemId, on: $on, condition: $condition) }": typeof types.GiveBackLentKitDocument,
    "query ModelsToTakeIn { catalogueModels { kind model } }": typeof types.ModelsToTakeInDocument,
    "\n  query LogLines($act: ID, $item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {\n    log(act: $act, item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 50, after: $after) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id sentence itemId tourId tourName showId moreRows rows { table key before after } } }\n    }\n  }\n": typeof types.LogLinesDocument,
    "query LogPeople { people { id name } }": typeof types.LogPeopleDocument,
    "query LogTours { tours(first: 200) { edges { node { id name } } } }": typeof types.LogToursDocument,
    "\n  query LogActs($item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {\n    logActs(item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 40, after: $after) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id lines isMoreThanCounted line { id at doneAt who sentence itemId tourId tourName showId moreRows rows { table key before after } } } }\n    }\n  }\n": typeof types.LogActsDocument,
    "query LogSeal { logSeal { head lines sealedAt } }": typeof types.LogSealDocument,
    "query BarredNow($id: ID!) { plan(id: $id) { flying { hang name inCharge } barred { itemId reason sentence loads hangs } doneAlthoughBarred { id tourId what hang sentence seen } } }": typeof types.BarredNowDocument,
    "\n  query ShowPage($tourId: ID!, $showId: ID!) {\n    showPage(tourId: $tourId, showId: $showId) {\n      tourId showId name tourName\n      released { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { code sentence } hangs trucks show { name venue from to number of } }\n      draft { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { code sentence } hangs trucks show { name venue from to number of } }\n      revisions { id state revision releasedAt releasedBy }\n    }\n  }\n": typeof types.ShowPageDocument,
    "query PlanProgress($id: ID!) { plan(id: $id) { ticks tickRemarks { what remark by } cartChecks { load checkedBy } } }": typeof types.PlanProgressDocument,
    "query PlanFindings($id: ID!) { plan(id: $id) { findings { code weight section subject date sentence fact } } }": typeof types.PlanFindingsDocument,
    "query PlanCarts($id: ID!) { plan(id: $id) { carts } }": typeof types.PlanCartsDocument,
    "query PlanPicks($id: ID!) { plan(id: $id) { picks } }": typeof types.PlanPicksDocument,
    "query PlanHang($id: ID!, $hang: String!) { plan(id: $id) { hang(hang: $hang) } }": typeof types.PlanHangDocument,
    "query PlanHardware($id: ID!) { plan(id: $id) { hardware } }": typeof types.PlanHardwareDocument,
    "query PlanTruckHead($id: ID!) { plan(id: $id) { truckHead } }": typeof types.PlanTruckHeadDocument,
    "query PlanTruck($id: ID!, $truck: String!) { plan(id: $id) { truck(truck: $truck) } }": typeof types.PlanTruckDocument,
    "query PlanDue($id: ID!) { plan(id: $id) { due } }": typeof types.PlanDueDocument,
    "query WholePlan($id: ID!) { plan(id: $id) { plan } }": typeof types.WholePlanDocument,
    "\n  mutation MakePackPlan($tourId: ID!, $showId: ID!) {\n    makePackPlan(tourId: $tourId, showId: $showId, waitMs: 800) {\n      __typename\n      ... on PlanMade { planId }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": typeof types.MakePackPlanDocument,
    "\n  mutation ReleasePackPlan($planId: ID!, $despite: String, $countersign: CountersignInput) {\n    releasePackPlan(planId: $planId, despite: $despite, countersign: $countersign) {\n      __typename\n      ... on PlanView { id revision }\n      ... on BookingRefusal { code sentence clashes { item from to tour } }\n      ... on StaleRefusal { code sentence changed { code sentence } }\n      ... on StopRefusal { code sentence stops { code sentence } needsOfficer }\n    }\n  }\n": typeof types.ReleasePackPlanDocument,
    "query PlanDifference($from: ID!, $to: ID!) { planDifference(from: $from, to: $to) { sentences hangsChanged boxes { hang position from to } } }": typeof types.PlanDifferenceDocument,
    "mutation Tick($planId: ID!, $what: String!, $done: Boolean!, $remark: String) { tick(planId: $planId, what: $what, done: $done, remark: $remark) { id } }": typeof types.TickDocument,
    "\n  mutation ConfirmCart($planId: ID!, $load: String!, $serials: [String!]!) {\n    confirmCart(planId: $planId, load: $load, serials: $serials) { agrees slots { slot expected found agrees code sentence } barred { itemId sentence } }\n  }\n": typeof types.ConfirmCartDocument,
    "mutation SeeBarredAct($tourId: ID!, $id: ID!, $because: String!) { seeBarredAct(tourId: $tourId, id: $id, because: $because) }": typeof types.SeeBarredActDocument,
    "\n  mutation RecordExamination($itemId: ID!, $examination: AnyJson!, $supersedes: ID, $reason: String) {\n    recordExamination(itemId: $itemId, examination: $examination, supersedes: $supersedes, reason: $reason) { summary { id dueOn } }\n  }\n": typeof types.RecordExaminationDocument,
    "query ExaminationRulesOnFile { rules }": typeof types.ExaminationRulesOnFileDocument,
    "\n  query ItemRecords($id: ID!, $after: String) {\n    item(id: $id) {\n      records(first: 20, after: $after) {\n        pageInfo { hasNextPage endCursor }\n        edges { node { id examination recordedBy recordedAt supersededBy supersedes reason file { id name type sizeBytes sha256 } kept lines } }\n      }\n    }\n  }\n": typeof types.ItemRecordsDocument,
    "\n  query ItemHistory($id: ID!, $after: String) {\n    item(id: $id) {\n      history(first: 20, after: $after) { pageInfo { hasNextPage endCursor } edges { node { at who what sentence } } }\n    }\n  }\n": typeof types.ItemHistoryDocument,
    "\n  query ItemPage($id: ID!) {\n    item(id: $id) {\n      item\n      summary { id kind model state depot count place dueOn dueState }\n      promises { tour from to count }\n    }\n  }\n": typeof types.ItemPageDocument,
    "mutation Quarantine($itemId: ID!, $reason: String!) { quarantine(itemId: $itemId, reason: $reason) { summary { id state } } }": typeof types.QuarantineDocument,
    "mutation ReleaseFromQuarantine($itemId: ID!, $reason: String!) { releaseFromQuarantine(itemId: $itemId, reason: $reason) { summary { id state } } }": typeof types.ReleaseFromQuarantineDocument,
    "mutation RecordIncident($itemId: ID!, $on: String!, $what: String!) { recordIncident(itemId: $itemId, on: $on, what: $what) { summary { id } } }": typeof types.RecordIncidentDocument,
    "\n  mutation ChangeItems($ids: [ID!]!, $cells: [CellInput!]!, $reason: String) {\n    changeItems(ids: $ids, cells: $cells, reason: $reason) {\n      __typename\n      ... on ManyChanged { changed unchanged waits { id sentence } }\n      ... on ManyRefusal { refused { id column value wanted } }\n    }\n  }\n": typeof types.ChangeItemsDocument,
    "\n  query Items($search: String, $kind: String, $state: String, $model: String, $depot: String, $sort: String, $descending: Boolean, $after: String) {\n    items(search: $search, kind: $kind, state: $state, model: $model, depot: $depot, sort: $sort, descending: $descending, first: 50, after: $after) {\n      totalCount isMoreThanCounted\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model state depot count place dueOn dueState } }\n    }\n  }\n": typeof types.ItemsDocument,
    "query RegisterDepots { depots }": typeof types.RegisterDepotsDocument,
    "query LotSplits($itemId: ID!) { lotSplits(itemId: $itemId) { parentId childId pieces ofPieces state reason madeBy madeAt } }": typeof types.LotSplitsDocument,
    "\n  mutation SplitLot($itemId: ID!, $pieces: Int!, $state: String!, $reason: String!) {\n    splitLot(itemId: $itemId, pieces: $pieces, state: $state, reason: $reason) { taken left }\n  }\n": typeof types.SplitLotDocument,
    "query Models { catalogueModels { kind model itemCount data } riggingSystems rules }": typeof types.ModelsDocument,
    "mutation CorrectSerial($itemId: ID!, $serial: String!, $reason: String!) { correctSerial(itemId: $itemId, serial: $serial, reason: $reason) { summary { id } } }": typeof types.CorrectSerialDocument,
    "mutation SaveLoadRule($rule: ModelJson!, $was: ModelJson, $reason: String) { saveLoadRule(rule: $rule, was: $was, reason: $reason) }": typeof types.SaveLoadRuleDocument,
    "mutation ApproveRiggingSystem($id: ID!) { approveRiggingSystem(id: $id) }": typeof types.ApproveRiggingSystemDocument,
    "mutation SaveRiggingSystem($system: ModelJson!, $was: ModelJson) { saveRiggingSystem(system: $system, was: $was) }": typeof types.SaveRiggingSystemDocument,
    "query WearRules { rules }": typeof types.WearRulesDocument,
    "mutation AddExaminationRules($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }": typeof types.AddExaminationRulesDocument,
    "mutation RemoveExaminationRule($rule: ModelJson!, $reason: String!) { removeExaminationRule(rule: $rule, reason: $reason) }": typeof types.RemoveExaminationRuleDocument,
    "query ExaminationRuleEditions { examinationRuleEditions { id was wanted reason madeBy madeAt } }": typeof types.ExaminationRuleEditionsDocument,
    "mutation AddExaminationRule($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }": typeof types.AddExaminationRuleDocument,
    "mutation ChangeExaminationRule($was: ModelJson!, $rule: ModelJson!, $reason: String!) { changeExaminationRule(was: $was, rule: $rule, reason: $reason) }": typeof types.ChangeExaminationRuleDocument,
    "query PlanImprovement($planId: ID!) { planImprovement(planId: $planId) { code sentence } }": typeof types.PlanImprovementDocument,
    "\n  mutation TakeImprovement($planId: ID!) {\n    takeImprovement(planId: $planId) { __typename ... on PlanMade { planId } ... on StaleRefusal { sentence changed { sentence } } }\n  }\n": typeof types.TakeImprovementDocument,
    "query LatestSearch($tourId: ID!, $showId: ID!) { latestJob(kind: \"search\", tourId: $tourId, showId: $showId) { id state progress sentence askedBy } }": typeof types.LatestSearchDocument,
    "mutation StartSearch($tourId: ID!, $showId: ID!) { startSearch(tourId: $tourId, showId: $showId) { id state } }": typeof types.StartSearchDocument,
    "mutation StopSearch($id: ID!) { cancelJob(id: $id) { id state } }": typeof types.StopSearchDocument,
    "query LatestMaking($tourId: ID!, $showId: ID!) { latestJob(kind: \"make\", tourId: $tourId, showId: $showId) { id state progress askedBy } }": typeof types.LatestMakingDocument,
    "mutation StopMaking($id: ID!) { cancelJob(id: $id) { id state } }": typeof types.StopMakingDocument,
    "\n  mutation SwapBox($planId: ID!, $serial: String!, $reason: String!) {\n    swapBox(planId: $planId, serial: $serial, reason: $reason, waitMs: 800) {\n      __typename\n      ... on SwapResult { draftId marked difference { sentences } }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": typeof types.SwapBoxDocument,
    "query WhyHere($id: ID!, $load: String!, $slot: Int) { whyHere(planId: $id, load: $load, slot: $slot) { code sentence } }": typeof types.WhyHereDocument,
    "\n  query Attention($role: String!, $after: String) {\n    attention(role: $role, first: 30, after: $after) {\n      totalCount showCount plannedCount\n      pageInfo { hasNextPage endCursor }\n      edges { node { weight code subject date sentence tourId showId show itemId } }\n    }\n  }\n": typeof types.AttentionDocument,
    "query AnyTour { tours(first: 1) { edges { node { id } } } items(first: 1) { edges { node { id } } } }": typeof types.AnyTourDocument,
    "query BetweenShows($tourId: ID!) { betweenShows(tourId: $tourId) { from to what } }": typeof types.BetweenShowsDocument,
    "query Tour($id: ID!) { tour(id: $id) { id version tour removedShows { showId name from to removedOn removedBy revisions } } showStates(tourId: $id) { showId state revision stops looks } }": typeof types.TourDocument,
    "mutation SaveTour($tour: TourJson!, $expectedVersion: Int) { saveTour(tour: $tour, expectedVersion: $expectedVersion) { id version tour } }": typeof types.SaveTourDocument,
    "query HouseRules { rules items(kind: \"truck\", first: 100) { edges { node { id model depot } } } }": typeof types.HouseRulesDocument,
    "\n  query Tours($after: String) {\n    tours(first: 50, after: $after) { pageInfo { hasNextPage endCursor } edges { node { id name prepFrom returnTo shows } } }\n  }\n": typeof types.ToursDocument,
    "\n  query TakenAlong($tourId: ID!, $showId: ID) { takenAlong(tourId: $tourId, showId: $showId) { shows hangs boxes drafts inForce revisions givenBack } }\n": typeof types.TakenAlongDocument,
    "\n  mutation RemoveShow($tourId: ID!, $showId: ID!, $expectedVersion: Int!) { removeShow(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }\n": typeof types.RemoveShowDocument,
    "\n  mutation PutShowBack($tourId: ID!, $showId: ID!, $expectedVersion: Int!) { putShowBack(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }\n": typeof types.PutShowBackDocument,
    "\n  mutation RemoveTour($tourId: ID!, $expectedVersion: Int!) { removeTour(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }\n": typeof types.RemoveTourDocument,
    "\n  mutation PutTourBack($tourId: ID!, $expectedVersion: Int!) { putTourBack(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }\n": typeof types.PutTourBackDocument,
    "\n  query RemovedTours { removedTours { id name prepFrom returnTo version removedOn removedBy revisions } }\n": typeof types.RemovedToursDocument,
    "\n  mutation ChooseVenue($tourId: ID!, $showId: ID!, $venueId: ID) { chooseVenue(tourId: $tourId, showId: $showId, venueId: $venueId) }\n": typeof types.ChooseVenueDocument,
    "\n  query ShowVenue($tourId: ID!, $showId: ID!) { venues { id venue } venueOfShow(tourId: $tourId, showId: $showId) { id } }\n": typeof types.ShowVenueDocument,
    "query HardwareModels { catalogueModels { kind model } }": typeof types.HardwareModelsDocument,
    "\n  query TravellingKit {\n    trucks: items(kind: \"truck\", first: 100) { edges { node { id model } } }\n    cases: items(kind: \"case\", first: 200) { edges { node { id model } } }\n  }\n": typeof types.TravellingKitDocument,
    "\n  query TourPlaces($tourId: ID!) {\n    tourPlaces(tourId: $tourId) {\n      places { place hasRules judgedBy decisions { rulesOf because decidedBy decidedAt } }\n      ruled\n      home\n    }\n  }\n": typeof types.TourPlacesDocument,
    "\n  mutation AnswerPlace($tourId: ID!, $place: String!, $rulesOf: String, $reason: String!) {\n    answerPlace(tourId: $tourId, place: $place, rulesOf: $rulesOf, reason: $reason) { home }\n  }\n": typeof types.AnswerPlaceDocument,
    "query WholeTour($tourId: ID!) { wholeTour(tourId: $tourId) { plan madeAt madeBy } }": typeof types.WholeTourDocument,
    "\n  mutation PlanWholeTour($tourId: ID!, $depot: Float!, $dock: Float!, $fixedUntil: Int!) {\n    planWholeTour(tourId: $tourId, depot: $depot, dock: $dock, fixedUntil: $fixedUntil, waitMs: 800) {\n      __typename\n      ... on TourPlanned { tourId }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": typeof types.PlanWholeTourDocument,
    "query CsvImport($id: ID!) { csvImport(id: $id) { id of dryRun askedBy askedAt state step rowsTotal rowsChecked rowsWritten rowsDated seconds code outcome { rows added changed unchanged failed waiting faulty firstAdded firstFailed firstChanged { id what } firstWaiting faults { column wanted count rows first { row value } } } } }": typeof types.CsvImportDocument,
    "query LatestCsvImports { latestCsvImports { id of dryRun askedBy askedAt state rowsTotal seconds } }": typeof types.LatestCsvImportsDocument,
    "mutation CancelCsvImport($id: ID!) { cancelCsvImport(id: $id) { id state } }": typeof types.CancelCsvImportDocument,
    "\n  mutation KeepRow($planId: ID!, $truck: String!, $row: Int!) {\n    keepRow(planId: $planId, waitMs: 800, truck: $truck, row: $row) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.KeepRowDocument,
    "\n  mutation KeepLoaded($planId: ID!) {\n    keepLoaded(planId: $planId, waitMs: 800) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.KeepLoadedDocument,
    "\n  mutation KeepPieces($planId: ID!, $pieces: [String!]!) {\n    keepPieces(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.KeepPiecesDocument,
    "\n  mutation LetPiecesGo($planId: ID!, $pieces: [String!]) {\n    letPiecesGo(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.LetPiecesGoDocument,
    "\n  mutation WaiveOrder($planId: ID!, $piece: String!, $reason: String!) {\n    waiveOrder(planId: $planId, waitMs: 800, piece: $piece, reason: $reason) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.WaiveOrderDocument,
    "\n  mutation EndWaiver($planId: ID!, $piece: String!) {\n    endWaiver(planId: $planId, waitMs: 800, piece: $piece) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.EndWaiverDocument,
    "\n  mutation TakeCase($planId: ID!, $case: String!) {\n    takeCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.TakeCaseDocument,
    "\n  mutation LeaveCase($planId: ID!, $case: String!) {\n    leaveCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.LeaveCaseDocument,
    "\n  mutation SetGroupEnd($planId: ID!, $group: String!, $end: String) {\n    setGroupEnd(planId: $planId, waitMs: 800, group: $group, end: $end) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": typeof types.SetGroupEndDocument,
    "\n  query RowSwap($planId: ID!, $truck: String!, $first: Int!, $second: Int!) {\n    rowSwap(planId: $planId, truck: $truck, first: $first, second: $second) {\n      first second sideBeforeMm sideAfterMm axles { axle beforeKg afterKg limitKg } breaches { piece mayBeWaived sentence }\n    }\n  }\n": typeof types.RowSwapDocument,
    "\n  mutation SwapRows($planId: ID!, $truck: String!, $first: Int!, $second: Int!, $reason: String) {\n    swapRows(planId: $planId, waitMs: 800, truck: $truck, first: $first, second: $second, reason: $reason) {\n      __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": typeof types.SwapRowsDocument,
    "\n  mutation TakePieceAlong($planId: ID!, $piece: String!) {\n    takePieceAlong(planId: $planId, piece: $piece, waitMs: 800) {\n      __typename\n      ... on LoadingDone { draftId changes }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": typeof types.TakePieceAlongDocument,
    "\n  mutation LeavePiece($planId: ID!, $piece: String!, $reason: String!) {\n    leavePiece(planId: $planId, piece: $piece, reason: $reason, waitMs: 800) {\n      __typename\n      ... on LoadingDone { draftId changes }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": typeof types.LeavePieceDocument,
    "query Venues { venues { id version venue shows { tourId showId } } }": typeof types.VenuesDocument,
    "\n  mutation SaveVenue($id: ID, $venue: VenueJson!, $expectedVersion: Int) { saveVenue(id: $id, venue: $venue, expectedVersion: $expectedVersion) { id } }\n": typeof types.SaveVenueDocument,
    "\n  query Visits($from: String!, $to: String!, $depot: String) {\n    depots\n    visits(from: $from, to: $to, depot: $depot) { id onDay depot placeName state remark entered version list }\n    showsInSeason(from: $from, to: $to) { tourId showId name from to }\n  }\n": typeof types.VisitsDocument,
    "\n  query VisitSeason($from: String!, $to: String!, $depot: String, $withIdle: Boolean!, $without: [ID!]!, $check: String) {\n    visitSeason(from: $from, to: $to, depot: $depot, withIdle: $withIdle, without: $without, check: $check) { answer without names { id kind model } }\n  }\n": typeof types.VisitSeasonDocument,
    "\n  query CountedUse($depot: String) { countedUse(depot: $depot) { itemId kind model depot jurisdiction basis every since count isDue } }\n": typeof types.CountedUseDocument,
    "mutation AddVisitDays($days: [PossibleDayInput!]!) { addVisitDays(days: $days) }": typeof types.AddVisitDaysDocument,
    "\n  mutation AgreeVisits($from: String!, $to: String!, $depot: String, $visits: [ID!]!) { agreeVisits(from: $from, to: $to, depot: $depot, visits: $visits) }\n": typeof types.AgreeVisitsDocument,
    "\n  mutation MoveVisit($id: ID!, $onDay: String!, $expectedVersion: Int!) { moveVisit(id: $id, onDay: $onDay, expectedVersion: $expectedVersion) }\n": typeof types.MoveVisitDocument,
    "mutation CancelVisit($id: ID!, $expectedVersion: Int!) { cancelVisit(id: $id, expectedVersion: $expectedVersion) }": typeof types.CancelVisitDocument,
    "\n  query VisitList($id: ID!) {\n    visitList(id: $id) {\n      visit { id onDay placeName state list entered version }\n      items { id kind model place intervals rules }\n      lines { itemId examinationId outcome report remark }\n    }\n  }\n": typeof types.VisitListDocument,
    "\n  mutation EnterVisitResults($id: ID!, $examiner: String!, $reportFile: ID, $lines: [VisitResultInput!]!) {\n    enterVisitResults(id: $id, examiner: $examiner, reportFile: $reportFile, lines: $lines) { visit { entered } }\n  }\n": typeof types.EnterVisitResultsDocument,
    "query OwnCalendars { ownCalendars { id depot madeAt } }": typeof types.OwnCalendarsDocument,
    "mutation RenewCalendar($depot: String) { renewCalendar(depot: $depot) }": typeof types.RenewCalendarDocument,
    "mutation WithdrawCalendar($id: ID!) { withdrawCalendar(id: $id) }": typeof types.WithdrawCalendarDocument,
    "\n  query Me { me { id name role mustChange deputyships { officer until depot tourId } onePerson { since until by reason endedBecause } } }\n": typeof types.MeDocument,
    "query JobState($id: ID!) { job(id: $id) { id state progress } }": typeof types.JobStateDocument,
    "mutation CancelJob($id: ID!) { cancelJob(id: $id) { id state progress } }": typeof types.CancelJobDocument,
    "query RuledPlaces { rules }": typeof types.RuledPlacesDocument,
};
const documents: Documents = {
    "mutation SignOut { signOut }": types.SignOutDocument,
    "\n  query Deputies {\n    deputies { id personId person officerId officer from until depot tour reason namedBy state }\n    people { id name role state passwordByOfficer }\n    tours(first: 100) { edges { node { id name } } }\n  }\n": types.DeputiesDocument,
    "mutation NameDeputy($deputy: DeputyInput!) { nameDeputy(deputy: $deputy) }": types.NameDeputyDocument,
    "mutation SignDeputy($id: ID!) { signDeputy(id: $id) }": types.SignDeputyDocument,
    "mutation WithdrawDeputy($id: ID!) { withdrawDeputy(id: $id) }": types.WithdrawDeputyDocument,
    "mutation SetOnePerson($isOn: Boolean!, $reason: String!) { setOnePerson(isOn: $isOn, reason: $reason) }": types.SetOnePersonDocument,
    "query People { people { id name email role state sessions proposedBy } }": types.PeopleDocument,
    "mutation AddPerson($person: PersonInput!) { addPerson(person: $person) { id } }": types.AddPersonDocument,
    "mutation ChangePassword($old: String!, $next: String!) { changePassword(old: $old, next: $next) }": types.ChangePasswordDocument,
    "mutation RenamePerson($id: ID!, $name: String!, $was: String) { renamePerson(id: $id, name: $name, was: $was) { id name } }": types.RenamePersonDocument,
    "mutation RenewPassword($id: ID!, $password: String!) { renewPassword(id: $id, password: $password) }": types.RenewPasswordDocument,
    "mutation DisablePerson($id: ID!) { disablePerson(id: $id) }": types.DisablePersonDocument,
    "mutation EnablePerson($id: ID!) { enablePerson(id: $id) }": types.EnablePersonDocument,
    "mutation ChangeRole($id: ID!, $role: String!, $was: String) { changeRole(id: $id, role: $role, was: $was) }": types.ChangeRoleDocument,
    "mutation ProposeOfficer($id: ID!) { proposeOfficer(id: $id) }": types.ProposeOfficerDocument,
    "mutation AnswerProposal($id: ID!, $accept: Boolean!, $password: String) { answerProposal(id: $id, accept: $accept, password: $password) }": types.AnswerProposalDocument,
    "mutation RemovePerson($id: ID!) { removePerson(id: $id) }": types.RemovePersonDocument,
    "query Sessions { sessions { id openedAt seenAt address device isThis } }": types.SessionsDocument,
    "mutation EndSessions($id: ID) { endSessions(id: $id) }": types.EndSessionsDocument,
    "mutation SetUp($code: String!, $people: FirstPeopleInput!) { setUp(code: $code, people: $people) }": types.SetUpDocument,
    "\n  mutation SignIn($email: String!, $password: String!) {\n    signIn(email: $email, password: $password) { __typename ... on Account { id } ... on SignInRefusal { sentence } }\n  }\n": types.SignInDocument,
    "query ToSetUp { isToSetUp }": types.ToSetUpDocument,
    "mutation FirstPassword($next: String!) { changePassword(old: \"\", next: $next) }": types.FirstPasswordDocument,
    "\n  query Beginning {\n    beginningOfHouse {\n      officers warehouse examinationRules loadRules systems approvedSystems models { kind count } items { kind count } waiting tours hangs plans\n    }\n  }\n": types.BeginningDocument,
    "mutation DoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { doMove(planId: $planId, box: $box, from: $from, to: $to) }": types.DoMoveDocument,
    "mutation UndoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { undoMove(planId: $planId, box: $box, from: $from, to: $to) }": types.UndoMoveDocument,
    "query WorkList($planId: ID!) { workList(planId: $planId) }": types.WorkListDocument,
    "mutation SetStack($cart: ID!, $serials: [String!]!) { setStack(cart: $cart, serials: $serials) { summary { id } } }": types.SetStackDocument,
    "\n  query CountSheet($tourId: ID!, $showId: ID!) {\n    countSheet(tourId: $tourId, showId: $showId) {\n      tourId showId name tourName notCountedBefore { showId name }\n      lines {\n        key item fitted spares\n        learned { priorMean losses uses posteriorMean sparesByPriorAlone }\n        counted { id sent returned damaged losses countedBy countedAt }\n      }\n      records { id key shows sent returned damaged losses uses corrects reason countedBy countedAt inForce }\n    }\n  }\n": types.CountSheetDocument,
    "\n  mutation RecordCounts($tourId: ID!, $showIds: [ID!]!, $lines: [CountInput!]!) {\n    recordCounts(tourId: $tourId, showIds: $showIds, lines: $lines) {\n      __typename\n      ... on CountSheet { showId }\n      ... on CountRefusal { sentence }\n    }\n  }\n": types.RecordCountsDocument,
    "\n  mutation CorrectCount($id: ID!, $sent: Int!, $returned: Int!, $damaged: Int!, $reason: String!) {\n    correctCount(id: $id, sent: $sent, returned: $returned, damaged: $damaged, reason: $reason) { showId }\n  }\n": types.CorrectCountDocument,
    "mutation TakeCountBack($id: ID!, $reason: String!) { takeCountBack(id: $id, reason: $reason) { showId } }": types.TakeCountBackDocument,
    "\n  query Dates($first: Int, $after: String, $depot: String, $tour: String, $kind: String, $days: Int) {\n    examinedItems(first: $first, after: $after, depot: $depot, tour: $tour, kind: $kind, days: $days) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model place dueOn dueState state count } }\n    }\n  }\n": types.DatesDocument,
    "query DatesChoices { depots tours(first: 200) { edges { node { id name } } } }": types.DatesChoicesDocument,
    "\n  query Proposals($after: String) {\n    proposals(first: 50, after: $after) {\n      totalCount\n      newest\n      holdsOwn\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind subject itemId sentence proposedBy proposedAt reason isOwn figures { name was wanted } } }\n    }\n  }\n": types.ProposalsDocument,
    "query HowManyWait { proposals(first: 1) { totalCount } }": types.HowManyWaitDocument,
    "query WaitsOfItem($id: ID!) { proposalsOfItem(itemId: $id) { id kind subject sentence proposedBy figures { name was wanted } } }": types.WaitsOfItemDocument,
    "query WaitsOfCatalogue { proposalsOfCatalogue { id kind subject sentence proposedBy figures { name was wanted } } }": types.WaitsOfCatalogueDocument,
    "mutation AnswerProposals($ids: [ID!], $through: ID, $accept: Boolean!, $reason: String!) { answerProposals(ids: $ids, through: $through, accept: $accept, reason: $reason) }": types.AnswerProposalsDocument,
    "mutation AnswerAllProposals($through: ID!, $accept: Boolean!, $reason: String!) { answerAllProposals(through: $through, accept: $accept, reason: $reason) { id } }": types.AnswerAllProposalsDocument,
    "query ProposalAnswering { latestProposalAnswering { id accept reason askedBy isGoing total answered looked leftBecause seconds } }": types.ProposalAnsweringDocument,
    "query ShowsToServe { tours(first: 100) { edges { node { id name showNames { showId name } } } } }": types.ShowsToServeDocument,
    "\n  query FirstDayFor($tourId: ID!, $showId: ID!, $from: String!, $days: Int!) {\n    firstDayFor(tourId: $tourId, showId: $showId, from: $from, days: $days)\n  }\n": types.FirstDayForDocument,
    "\n  query FleetCalendar($from: String!, $days: Int!, $depot: String) {\n    depots\n    fleetCalendar(from: $from, days: $days, depot: $depot) { model count days { day free promised out short } }\n  }\n": types.FleetCalendarDocument,
    "query Remedies($model: String!, $day: String!, $depot: String) { remedies(model: $model, day: $day, depot: $depot) { serial kind sentence } }": types.RemediesDocument,
    "query OpenHolds { openHolds { id name from to until items barred } }": types.OpenHoldsDocument,
    "\n  mutation PlaceHold($hold: HoldInput!) {\n    placeHold(hold: $hold) { __typename ... on Hold { id } ... on BookingRefusal { sentence } }\n  }\n": types.PlaceHoldDocument,
    "mutation GiveHoldBack($id: ID!) { giveHoldBack(id: $id) }": types.GiveHoldBackDocument,
    "\n  query FaultSheet($itemId: ID!) {\n    faultSheet(itemId: $itemId) {\n      id kind model state count spare\n      faults { kind what then pieces moment by }\n      fliesIn { tourId showId show from load cart }\n    }\n  }\n": types.FaultSheetDocument,
    "query OpenFaults($planId: ID!) { openFaults(planId: $planId) { item kind what then pieces moment by } }": types.OpenFaultsDocument,
    "\n  mutation ReportFault($itemId: ID!, $kind: String!, $what: String!, $then: String!, $pieces: Int) {\n    reportFault(itemId: $itemId, kind: $kind, what: $what, then: $then, pieces: $pieces) { id }\n  }\n": types.ReportFaultDocument,
    "query FloorCode($planId: ID!, $code: String!) { floorCode(planId: $planId, code: $code) { id kind model count whyNot wantedSerials } }": types.FloorCodeDocument,
    "query PrepSheet($planId: ID!) { prepSheet(planId: $planId) { uses { id kind model count depot inside } records { item kind agrees data moment by } } }": types.PrepSheetDocument,
    "mutation BenchTest($planId: ID!, $itemId: ID!, $failed: [String!]!, $remark: String!) { benchTest(planId: $planId, itemId: $itemId, failed: $failed, remark: $remark) }": types.BenchTestDocument,
    "mutation ReadSplays($planId: ID!, $load: String!, $splays: [Float!]!) { readSplays(planId: $planId, load: $load, splays: $splays) }": types.ReadSplaysDocument,
    "mutation CountTrunk($planId: ID!, $trunk: ID!, $counts: [CountedInTrunk!]!) { countTrunk(planId: $planId, trunk: $trunk, counts: $counts) }": types.CountTrunkDocument,
    "query ReturnSheet($planId: ID!) { returnSheet(planId: $planId) { id kind model cart slot load back { moment by } seen { moment by with place } } }": types.ReturnSheetDocument,
    "mutation ReturnCart($planId: ID!, $cart: ID!, $serials: [ID!]!) { returnCart(planId: $planId, cart: $cart, serials: $serials) { id } }": types.ReturnCartDocument,
    "mutation ReturnItems($planId: ID!, $items: [ID!]!) { returnItems(planId: $planId, items: $items) { id } }": types.ReturnItemsDocument,
    "query HangModels { catalogueModels { kind model data } }": types.HangModelsDocument,
    "\n  mutation AddLoadReading($planId: ID!, $hang: String!, $hole: String!, $place: String!, $readingKg: Float!) {\n    addLoadReading(planId: $planId, hang: $hang, hole: $hole, place: $place, readingKg: $readingKg) { readings { id } }\n  }\n": types.AddLoadReadingDocument,
    "\n  query RiggingRecord($planId: ID!) {\n    riggingRecord(planId: $planId) {\n      readings { id hang hole place readingKg readAt readBy verdict sentence }\n      signOffs { id hang kind name remark company role place signedAt signedBy }\n    }\n  }\n": types.RiggingRecordDocument,
    "\n  mutation SignOff($planId: ID!, $hang: String!, $kind: String!, $name: String!, $remark: String!, $outside: OutsideInput) {\n    signOff(planId: $planId, hang: $hang, kind: $kind, name: $name, remark: $remark, outside: $outside) { signOffs { id } }\n  }\n": types.SignOffDocument,
    "query HouseState { houseState { version upSince databaseBytes tables { name bytes rows changedInMonth grownBytes } sizes { day bytes } grownSince connections connectionsLimit connectionsOfOne lastBackup jobsWaiting jobsRunning jobsFailed oldestWaits plans { kind count seconds } requests turnedAway faults eventLoopMs diskFreeBytes processes } }": types.HouseStateDocument,
    "\n  query InspectedItems($ids: [ID!], $kinds: [String!], $depots: [String!], $after: String) {\n    inspectedItems(ids: $ids, kinds: $kinds, depots: $depots, after: $after) { items hasMore }\n  }\n": types.InspectedItemsDocument,
    "query RulesAndSeal { rules logSeal { head lines sealedAt } }": types.RulesAndSealDocument,
    "\n  query SignOffs($planId: ID!) { riggingRecord(planId: $planId) { signOffs { hang kind name remark company role place signedAt signedBy } } }\n": types.SignOffsDocument,
    "\n  query ReportOfItem($id: ID!, $after: String) {\n    item(id: $id) {\n      records(first: 50, after: $after) {\n        pageInfo { hasNextPage endCursor }\n        edges { node { id examination recordedBy recordedAt reason file { name sha256 } kept lines } }\n      }\n    }\n  }\n": types.ReportOfItemDocument,
    "\n  query LabelItems($search: String, $kind: String, $serials: [ID!], $after: String) {\n    items(search: $search, kind: $kind, serials: $serials, first: 200, after: $after) {\n      totalCount isMoreThanCounted\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model } }\n    }\n  }\n": types.LabelItemsDocument,
    "query LentKit { lentKit { itemId kind model count depot owner lent barredBy } }": types.LentKitDocument,
    "mutation TakeInLentKit($kit: LentKitInput!) { takeInLentKit(kit: $kit) { itemId waits } }": types.TakeInLentKitDocument,
    "mutation ClearLentPaper($itemId: ID!, $reason: String!) { clearLentPaper(itemId: $itemId, reason: $reason) }": types.ClearLentPaperDocument,
    "mutation GiveBackLentKit($itemId: ID!, $on: String!, $condition: String!) { giveBackLentKit(itemId: $itemId, on: $on, condition: $condition) }": types.GiveBackLentKitDocument,
    "query ModelsToTakeIn { catalogueModels { kind model } }": types.ModelsToTakeInDocument,
    "\n  query LogLines($act: ID, $item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {\n    log(act: $act, item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 50, after: $after) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id sentence itemId tourId tourName showId moreRows rows { table key before after } } }\n    }\n  }\n": types.LogLinesDocument,
    "query LogPeople { people { id name } }": types.LogPeopleDocument,
    "query LogTours { tours(first: 200) { edges { node { id name } } } }": types.LogToursDocument,
    "\n  query LogActs($item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {\n    logActs(item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 40, after: $after) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id lines isMoreThanCounted line { id at doneAt who sentence itemId tourId tourName showId moreRows rows { table key before after } } } }\n    }\n  }\n": types.LogActsDocument,
    "query LogSeal { logSeal { head lines sealedAt } }": types.LogSealDocument,
    "query BarredNow($id: ID!) { plan(id: $id) { flying { hang name inCharge } barred { itemId reason sentence loads hangs } doneAlthoughBarred { id tourId what hang sentence seen } } }": types.BarredNowDocument,
    "\n  query ShowPage($tourId: ID!, $showId: ID!) {\n    showPage(tourId: $tourId, showId: $showId) {\n      tourId showId name tourName\n      released { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { code sentence } hangs trucks show { name venue from to number of } }\n      draft { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { code sentence } hangs trucks show { name venue from to number of } }\n      revisions { id state revision releasedAt releasedBy }\n    }\n  }\n": types.ShowPageDocument,
    "query PlanProgress($id: ID!) { plan(id: $id) { ticks tickRemarks { what remark by } cartChecks { load checkedBy } } }": types.PlanProgressDocument,
    "query PlanFindings($id: ID!) { plan(id: $id) { findings { code weight section subject date sentence fact } } }": types.PlanFindingsDocument,
    "query PlanCarts($id: ID!) { plan(id: $id) { carts } }": types.PlanCartsDocument,
    "query PlanPicks($id: ID!) { plan(id: $id) { picks } }": types.PlanPicksDocument,
    "query PlanHang($id: ID!, $hang: String!) { plan(id: $id) { hang(hang: $hang) } }": types.PlanHangDocument,
    "query PlanHardware($id: ID!) { plan(id: $id) { hardware } }": types.PlanHardwareDocument,
    "query PlanTruckHead($id: ID!) { plan(id: $id) { truckHead } }": types.PlanTruckHeadDocument,
    "query PlanTruck($id: ID!, $truck: String!) { plan(id: $id) { truck(truck: $truck) } }": types.PlanTruckDocument,
    "query PlanDue($id: ID!) { plan(id: $id) { due } }": types.PlanDueDocument,
    "query WholePlan($id: ID!) { plan(id: $id) { plan } }": types.WholePlanDocument,
    "\n  mutation MakePackPlan($tourId: ID!, $showId: ID!) {\n    makePackPlan(tourId: $tourId, showId: $showId, waitMs: 800) {\n      __typename\n      ... on PlanMade { planId }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": types.MakePackPlanDocument,
    "\n  mutation ReleasePackPlan($planId: ID!, $despite: String, $countersign: CountersignInput) {\n    releasePackPlan(planId: $planId, despite: $despite, countersign: $countersign) {\n      __typename\n      ... on PlanView { id revision }\n      ... on BookingRefusal { code sentence clashes { item from to tour } }\n      ... on StaleRefusal { code sentence changed { code sentence } }\n      ... on StopRefusal { code sentence stops { code sentence } needsOfficer }\n    }\n  }\n": types.ReleasePackPlanDocument,
    "query PlanDifference($from: ID!, $to: ID!) { planDifference(from: $from, to: $to) { sentences hangsChanged boxes { hang position from to } } }": types.PlanDifferenceDocument,
    "mutation Tick($planId: ID!, $what: String!, $done: Boolean!, $remark: String) { tick(planId: $planId, what: $what, done: $done, remark: $remark) { id } }": types.TickDocument,
    "\n  mutation ConfirmCart($planId: ID!, $load: String!, $serials: [String!]!) {\n    confirmCart(planId: $planId, load: $load, serials: $serials) { agrees slots { slot expected found agrees code sentence } barred { itemId sentence } }\n  }\n": types.ConfirmCartDocument,
    "mutation SeeBarredAct($tourId: ID!, $id: ID!, $because: String!) { seeBarredAct(tourId: $tourId, id: $id, because: $because) }": types.SeeBarredActDocument,
    "\n  mutation RecordExamination($itemId: ID!, $examination: AnyJson!, $supersedes: ID, $reason: String) {\n    recordExamination(itemId: $itemId, examination: $examination, supersedes: $supersedes, reason: $reason) { summary { id dueOn } }\n  }\n": types.RecordExaminationDocument,
    "query ExaminationRulesOnFile { rules }": types.ExaminationRulesOnFileDocument,
    "\n  query ItemRecords($id: ID!, $after: String) {\n    item(id: $id) {\n      records(first: 20, after: $after) {\n        pageInfo { hasNextPage endCursor }\n        edges { node { id examination recordedBy recordedAt supersededBy supersedes reason file { id name type sizeBytes sha256 } kept lines } }\n      }\n    }\n  }\n": types.ItemRecordsDocument,
    "\n  query ItemHistory($id: ID!, $after: String) {\n    item(id: $id) {\n      history(first: 20, after: $after) { pageInfo { hasNextPage endCursor } edges { node { at who what sentence } } }\n    }\n  }\n": types.ItemHistoryDocument,
    "\n  query ItemPage($id: ID!) {\n    item(id: $id) {\n      item\n      summary { id kind model state depot count place dueOn dueState }\n      promises { tour from to count }\n    }\n  }\n": types.ItemPageDocument,
    "mutation Quarantine($itemId: ID!, $reason: String!) { quarantine(itemId: $itemId, reason: $reason) { summary { id state } } }": types.QuarantineDocument,
    "mutation ReleaseFromQuarantine($itemId: ID!, $reason: String!) { releaseFromQuarantine(itemId: $itemId, reason: $reason) { summary { id state } } }": types.ReleaseFromQuarantineDocument,
    "mutation RecordIncident($itemId: ID!, $on: String!, $what: String!) { recordIncident(itemId: $itemId, on: $on, what: $what) { summary { id } } }": types.RecordIncidentDocument,
    "\n  mutation ChangeItems($ids: [ID!]!, $cells: [CellInput!]!, $reason: String) {\n    changeItems(ids: $ids, cells: $cells, reason: $reason) {\n      __typename\n      ... on ManyChanged { changed unchanged waits { id sentence } }\n      ... on ManyRefusal { refused { id column value wanted } }\n    }\n  }\n": types.ChangeItemsDocument,
    "\n  query Items($search: String, $kind: String, $state: String, $model: String, $depot: String, $sort: String, $descending: Boolean, $after: String) {\n    items(search: $search, kind: $kind, state: $state, model: $model, depot: $depot, sort: $sort, descending: $descending, first: 50, after: $after) {\n      totalCount isMoreThanCounted\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model state depot count place dueOn dueState } }\n    }\n  }\n": types.ItemsDocument,
    "query RegisterDepots { depots }": types.RegisterDepotsDocument,
    "query LotSplits($itemId: ID!) { lotSplits(itemId: $itemId) { parentId childId pieces ofPieces state reason madeBy madeAt } }": types.LotSplitsDocument,
    "\n  mutation SplitLot($itemId: ID!, $pieces: Int!, $state: String!, $reason: String!) {\n    splitLot(itemId: $itemId, pieces: $pieces, state: $state, reason: $reason) { taken left }\n  }\n": types.SplitLotDocument,
    "query Models { catalogueModels { kind model itemCount data } riggingSystems rules }": types.ModelsDocument,
    "mutation CorrectSerial($itemId: ID!, $serial: String!, $reason: String!) { correctSerial(itemId: $itemId, serial: $serial, reason: $reason) { summary { id } } }": types.CorrectSerialDocument,
    "mutation SaveLoadRule($rule: ModelJson!, $was: ModelJson, $reason: String) { saveLoadRule(rule: $rule, was: $was, reason: $reason) }": types.SaveLoadRuleDocument,
    "mutation ApproveRiggingSystem($id: ID!) { approveRiggingSystem(id: $id) }": types.ApproveRiggingSystemDocument,
    "mutation SaveRiggingSystem($system: ModelJson!, $was: ModelJson) { saveRiggingSystem(system: $system, was: $was) }": types.SaveRiggingSystemDocument,
    "query WearRules { rules }": types.WearRulesDocument,
    "mutation AddExaminationRules($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }": types.AddExaminationRulesDocument,
    "mutation RemoveExaminationRule($rule: ModelJson!, $reason: String!) { removeExaminationRule(rule: $rule, reason: $reason) }": types.RemoveExaminationRuleDocument,
    "query ExaminationRuleEditions { examinationRuleEditions { id was wanted reason madeBy madeAt } }": types.ExaminationRuleEditionsDocument,
    "mutation AddExaminationRule($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }": types.AddExaminationRuleDocument,
    "mutation ChangeExaminationRule($was: ModelJson!, $rule: ModelJson!, $reason: String!) { changeExaminationRule(was: $was, rule: $rule, reason: $reason) }": types.ChangeExaminationRuleDocument,
    "query PlanImprovement($planId: ID!) { planImprovement(planId: $planId) { code sentence } }": types.PlanImprovementDocument,
    "\n  mutation TakeImprovement($planId: ID!) {\n    takeImprovement(planId: $planId) { __typename ... on PlanMade { planId } ... on StaleRefusal { sentence changed { sentence } } }\n  }\n": types.TakeImprovementDocument,
    "query LatestSearch($tourId: ID!, $showId: ID!) { latestJob(kind: \"search\", tourId: $tourId, showId: $showId) { id state progress sentence askedBy } }": types.LatestSearchDocument,
    "mutation StartSearch($tourId: ID!, $showId: ID!) { startSearch(tourId: $tourId, showId: $showId) { id state } }": types.StartSearchDocument,
    "mutation StopSearch($id: ID!) { cancelJob(id: $id) { id state } }": types.StopSearchDocument,
    "query LatestMaking($tourId: ID!, $showId: ID!) { latestJob(kind: \"make\", tourId: $tourId, showId: $showId) { id state progress askedBy } }": types.LatestMakingDocument,
    "mutation StopMaking($id: ID!) { cancelJob(id: $id) { id state } }": types.StopMakingDocument,
    "\n  mutation SwapBox($planId: ID!, $serial: String!, $reason: String!) {\n    swapBox(planId: $planId, serial: $serial, reason: $reason, waitMs: 800) {\n      __typename\n      ... on SwapResult { draftId marked difference { sentences } }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": types.SwapBoxDocument,
    "query WhyHere($id: ID!, $load: String!, $slot: Int) { whyHere(planId: $id, load: $load, slot: $slot) { code sentence } }": types.WhyHereDocument,
    "\n  query Attention($role: String!, $after: String) {\n    attention(role: $role, first: 30, after: $after) {\n      totalCount showCount plannedCount\n      pageInfo { hasNextPage endCursor }\n      edges { node { weight code subject date sentence tourId showId show itemId } }\n    }\n  }\n": types.AttentionDocument,
    "query AnyTour { tours(first: 1) { edges { node { id } } } items(first: 1) { edges { node { id } } } }": types.AnyTourDocument,
    "query BetweenShows($tourId: ID!) { betweenShows(tourId: $tourId) { from to what } }": types.BetweenShowsDocument,
    "query Tour($id: ID!) { tour(id: $id) { id version tour removedShows { showId name from to removedOn removedBy revisions } } showStates(tourId: $id) { showId state revision stops looks } }": types.TourDocument,
    "mutation SaveTour($tour: TourJson!, $expectedVersion: Int) { saveTour(tour: $tour, expectedVersion: $expectedVersion) { id version tour } }": types.SaveTourDocument,
    "query HouseRules { rules items(kind: \"truck\", first: 100) { edges { node { id model depot } } } }": types.HouseRulesDocument,
    "\n  query Tours($after: String) {\n    tours(first: 50, after: $after) { pageInfo { hasNextPage endCursor } edges { node { id name prepFrom returnTo shows } } }\n  }\n": types.ToursDocument,
    "\n  query TakenAlong($tourId: ID!, $showId: ID) { takenAlong(tourId: $tourId, showId: $showId) { shows hangs boxes drafts inForce revisions givenBack } }\n": types.TakenAlongDocument,
    "\n  mutation RemoveShow($tourId: ID!, $showId: ID!, $expectedVersion: Int!) { removeShow(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }\n": types.RemoveShowDocument,
    "\n  mutation PutShowBack($tourId: ID!, $showId: ID!, $expectedVersion: Int!) { putShowBack(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }\n": types.PutShowBackDocument,
    "\n  mutation RemoveTour($tourId: ID!, $expectedVersion: Int!) { removeTour(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }\n": types.RemoveTourDocument,
    "\n  mutation PutTourBack($tourId: ID!, $expectedVersion: Int!) { putTourBack(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }\n": types.PutTourBackDocument,
    "\n  query RemovedTours { removedTours { id name prepFrom returnTo version removedOn removedBy revisions } }\n": types.RemovedToursDocument,
    "\n  mutation ChooseVenue($tourId: ID!, $showId: ID!, $venueId: ID) { chooseVenue(tourId: $tourId, showId: $showId, venueId: $venueId) }\n": types.ChooseVenueDocument,
    "\n  query ShowVenue($tourId: ID!, $showId: ID!) { venues { id venue } venueOfShow(tourId: $tourId, showId: $showId) { id } }\n": types.ShowVenueDocument,
    "query HardwareModels { catalogueModels { kind model } }": types.HardwareModelsDocument,
    "\n  query TravellingKit {\n    trucks: items(kind: \"truck\", first: 100) { edges { node { id model } } }\n    cases: items(kind: \"case\", first: 200) { edges { node { id model } } }\n  }\n": types.TravellingKitDocument,
    "\n  query TourPlaces($tourId: ID!) {\n    tourPlaces(tourId: $tourId) {\n      places { place hasRules judgedBy decisions { rulesOf because decidedBy decidedAt } }\n      ruled\n      home\n    }\n  }\n": types.TourPlacesDocument,
    "\n  mutation AnswerPlace($tourId: ID!, $place: String!, $rulesOf: String, $reason: String!) {\n    answerPlace(tourId: $tourId, place: $place, rulesOf: $rulesOf, reason: $reason) { home }\n  }\n": types.AnswerPlaceDocument,
    "query WholeTour($tourId: ID!) { wholeTour(tourId: $tourId) { plan madeAt madeBy } }": types.WholeTourDocument,
    "\n  mutation PlanWholeTour($tourId: ID!, $depot: Float!, $dock: Float!, $fixedUntil: Int!) {\n    planWholeTour(tourId: $tourId, depot: $depot, dock: $dock, fixedUntil: $fixedUntil, waitMs: 800) {\n      __typename\n      ... on TourPlanned { tourId }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": types.PlanWholeTourDocument,
    "query CsvImport($id: ID!) { csvImport(id: $id) { id of dryRun askedBy askedAt state step rowsTotal rowsChecked rowsWritten rowsDated seconds code outcome { rows added changed unchanged failed waiting faulty firstAdded firstFailed firstChanged { id what } firstWaiting faults { column wanted count rows first { row value } } } } }": types.CsvImportDocument,
    "query LatestCsvImports { latestCsvImports { id of dryRun askedBy askedAt state rowsTotal seconds } }": types.LatestCsvImportsDocument,
    "mutation CancelCsvImport($id: ID!) { cancelCsvImport(id: $id) { id state } }": types.CancelCsvImportDocument,
    "\n  mutation KeepRow($planId: ID!, $truck: String!, $row: Int!) {\n    keepRow(planId: $planId, waitMs: 800, truck: $truck, row: $row) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.KeepRowDocument,
    "\n  mutation KeepLoaded($planId: ID!) {\n    keepLoaded(planId: $planId, waitMs: 800) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.KeepLoadedDocument,
    "\n  mutation KeepPieces($planId: ID!, $pieces: [String!]!) {\n    keepPieces(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.KeepPiecesDocument,
    "\n  mutation LetPiecesGo($planId: ID!, $pieces: [String!]) {\n    letPiecesGo(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.LetPiecesGoDocument,
    "\n  mutation WaiveOrder($planId: ID!, $piece: String!, $reason: String!) {\n    waiveOrder(planId: $planId, waitMs: 800, piece: $piece, reason: $reason) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.WaiveOrderDocument,
    "\n  mutation EndWaiver($planId: ID!, $piece: String!) {\n    endWaiver(planId: $planId, waitMs: 800, piece: $piece) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.EndWaiverDocument,
    "\n  mutation TakeCase($planId: ID!, $case: String!) {\n    takeCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.TakeCaseDocument,
    "\n  mutation LeaveCase($planId: ID!, $case: String!) {\n    leaveCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.LeaveCaseDocument,
    "\n  mutation SetGroupEnd($planId: ID!, $group: String!, $end: String) {\n    setGroupEnd(planId: $planId, waitMs: 800, group: $group, end: $end) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n": types.SetGroupEndDocument,
    "\n  query RowSwap($planId: ID!, $truck: String!, $first: Int!, $second: Int!) {\n    rowSwap(planId: $planId, truck: $truck, first: $first, second: $second) {\n      first second sideBeforeMm sideAfterMm axles { axle beforeKg afterKg limitKg } breaches { piece mayBeWaived sentence }\n    }\n  }\n": types.RowSwapDocument,
    "\n  mutation SwapRows($planId: ID!, $truck: String!, $first: Int!, $second: Int!, $reason: String) {\n    swapRows(planId: $planId, waitMs: 800, truck: $truck, first: $first, second: $second, reason: $reason) {\n      __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": types.SwapRowsDocument,
    "\n  mutation TakePieceAlong($planId: ID!, $piece: String!) {\n    takePieceAlong(planId: $planId, piece: $piece, waitMs: 800) {\n      __typename\n      ... on LoadingDone { draftId changes }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": types.TakePieceAlongDocument,
    "\n  mutation LeavePiece($planId: ID!, $piece: String!, $reason: String!) {\n    leavePiece(planId: $planId, piece: $piece, reason: $reason, waitMs: 800) {\n      __typename\n      ... on LoadingDone { draftId changes }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n": types.LeavePieceDocument,
    "query Venues { venues { id version venue shows { tourId showId } } }": types.VenuesDocument,
    "\n  mutation SaveVenue($id: ID, $venue: VenueJson!, $expectedVersion: Int) { saveVenue(id: $id, venue: $venue, expectedVersion: $expectedVersion) { id } }\n": types.SaveVenueDocument,
    "\n  query Visits($from: String!, $to: String!, $depot: String) {\n    depots\n    visits(from: $from, to: $to, depot: $depot) { id onDay depot placeName state remark entered version list }\n    showsInSeason(from: $from, to: $to) { tourId showId name from to }\n  }\n": types.VisitsDocument,
    "\n  query VisitSeason($from: String!, $to: String!, $depot: String, $withIdle: Boolean!, $without: [ID!]!, $check: String) {\n    visitSeason(from: $from, to: $to, depot: $depot, withIdle: $withIdle, without: $without, check: $check) { answer without names { id kind model } }\n  }\n": types.VisitSeasonDocument,
    "\n  query CountedUse($depot: String) { countedUse(depot: $depot) { itemId kind model depot jurisdiction basis every since count isDue } }\n": types.CountedUseDocument,
    "mutation AddVisitDays($days: [PossibleDayInput!]!) { addVisitDays(days: $days) }": types.AddVisitDaysDocument,
    "\n  mutation AgreeVisits($from: String!, $to: String!, $depot: String, $visits: [ID!]!) { agreeVisits(from: $from, to: $to, depot: $depot, visits: $visits) }\n": types.AgreeVisitsDocument,
    "\n  mutation MoveVisit($id: ID!, $onDay: String!, $expectedVersion: Int!) { moveVisit(id: $id, onDay: $onDay, expectedVersion: $expectedVersion) }\n": types.MoveVisitDocument,
    "mutation CancelVisit($id: ID!, $expectedVersion: Int!) { cancelVisit(id: $id, expectedVersion: $expectedVersion) }": types.CancelVisitDocument,
    "\n  query VisitList($id: ID!) {\n    visitList(id: $id) {\n      visit { id onDay placeName state list entered version }\n      items { id kind model place intervals rules }\n      lines { itemId examinationId outcome report remark }\n    }\n  }\n": types.VisitListDocument,
    "\n  mutation EnterVisitResults($id: ID!, $examiner: String!, $reportFile: ID, $lines: [VisitResultInput!]!) {\n    enterVisitResults(id: $id, examiner: $examiner, reportFile: $reportFile, lines: $lines) { visit { entered } }\n  }\n": types.EnterVisitResultsDocument,
    "query OwnCalendars { ownCalendars { id depot madeAt } }": types.OwnCalendarsDocument,
    "mutation RenewCalendar($depot: String) { renewCalendar(depot: $depot) }": types.RenewCalendarDocument,
    "mutation WithdrawCalendar($id: ID!) { withdrawCalendar(id: $id) }": types.WithdrawCalendarDocument,
    "\n  query Me { me { id name role mustChange deputyships { officer until depot tourId } onePerson { since until by reason endedBecause } } }\n": types.MeDocument,
    "query JobState($id: ID!) { job(id: $id) { id state progress } }": types.JobStateDocument,
    "mutation CancelJob($id: ID!) { cancelJob(id: $id) { id state progress } }": types.CancelJobDocument,
    "query RuledPlaces { rules }": types.RuledPlacesDocument,
};

/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SignOut { signOut }"): typeof import('./graphql.js').SignOutDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Deputies {\n    deputies { id personId person officerId officer from until depot tour reason namedBy state }\n    people { id name role state passwordByOfficer }\n    tours(first: 100) { edges { node { id name } } }\n  }\n"): typeof import('./graphql.js').DeputiesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation NameDeputy($deputy: DeputyInput!) { nameDeputy(deputy: $deputy) }"): typeof import('./graphql.js').NameDeputyDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SignDeputy($id: ID!) { signDeputy(id: $id) }"): typeof import('./graphql.js').SignDeputyDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation WithdrawDeputy($id: ID!) { withdrawDeputy(id: $id) }"): typeof import('./graphql.js').WithdrawDeputyDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SetOnePerson($isOn: Boolean!, $reason: String!) { setOnePerson(isOn: $isOn, reason: $reason) }"): typeof import('./graphql.js').SetOnePersonDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query People { people { id name email role state sessions proposedBy } }"): typeof import('./graphql.js').PeopleDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation AddPerson($person: PersonInput!) { addPerson(person: $person) { id } }"): typeof import('./graphql.js').AddPersonDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ChangePassword($old: String!, $next: String!) { changePassword(old: $old, next: $next) }"): typeof import('./graphql.js').ChangePasswordDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation RenamePerson($id: ID!, $name: String!, $was: String) { renamePerson(id: $id, name: $name, was: $was) { id name } }"): typeof import('./graphql.js').RenamePersonDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation RenewPassword($id: ID!, $password: String!) { renewPassword(id: $id, password: $password) }"): typeof import('./graphql.js').RenewPasswordDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation DisablePerson($id: ID!) { disablePerson(id: $id) }"): typeof import('./graphql.js').DisablePersonDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation EnablePerson($id: ID!) { enablePerson(id: $id) }"): typeof import('./graphql.js').EnablePersonDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ChangeRole($id: ID!, $role: String!, $was: String) { changeRole(id: $id, role: $role, was: $was) }"): typeof import('./graphql.js').ChangeRoleDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ProposeOfficer($id: ID!) { proposeOfficer(id: $id) }"): typeof import('./graphql.js').ProposeOfficerDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation AnswerProposal($id: ID!, $accept: Boolean!, $password: String) { answerProposal(id: $id, accept: $accept, password: $password) }"): typeof import('./graphql.js').AnswerProposalDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation RemovePerson($id: ID!) { removePerson(id: $id) }"): typeof import('./graphql.js').RemovePersonDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query Sessions { sessions { id openedAt seenAt address device isThis } }"): typeof import('./graphql.js').SessionsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation EndSessions($id: ID) { endSessions(id: $id) }"): typeof import('./graphql.js').EndSessionsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SetUp($code: String!, $people: FirstPeopleInput!) { setUp(code: $code, people: $people) }"): typeof import('./graphql.js').SetUpDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation SignIn($email: String!, $password: String!) {\n    signIn(email: $email, password: $password) { __typename ... on Account { id } ... on SignInRefusal { sentence } }\n  }\n"): typeof import('./graphql.js').SignInDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query ToSetUp { isToSetUp }"): typeof import('./graphql.js').ToSetUpDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation FirstPassword($next: String!) { changePassword(old: \"\", next: $next) }"): typeof import('./graphql.js').FirstPasswordDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Beginning {\n    beginningOfHouse {\n      officers warehouse examinationRules loadRules systems approvedSystems models { kind count } items { kind count } waiting tours hangs plans\n    }\n  }\n"): typeof import('./graphql.js').BeginningDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation DoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { doMove(planId: $planId, box: $box, from: $from, to: $to) }"): typeof import('./graphql.js').DoMoveDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation UndoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { undoMove(planId: $planId, box: $box, from: $from, to: $to) }"): typeof import('./graphql.js').UndoMoveDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query WorkList($planId: ID!) { workList(planId: $planId) }"): typeof import('./graphql.js').WorkListDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SetStack($cart: ID!, $serials: [String!]!) { setStack(cart: $cart, serials: $serials) { summary { id } } }"): typeof import('./graphql.js').SetStackDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query CountSheet($tourId: ID!, $showId: ID!) {\n    countSheet(tourId: $tourId, showId: $showId) {\n      tourId showId name tourName notCountedBefore { showId name }\n      lines {\n        key item fitted spares\n        learned { priorMean losses uses posteriorMean sparesByPriorAlone }\n        counted { id sent returned damaged losses countedBy countedAt }\n      }\n      records { id key shows sent returned damaged losses uses corrects reason countedBy countedAt inForce }\n    }\n  }\n"): typeof import('./graphql.js').CountSheetDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation RecordCounts($tourId: ID!, $showIds: [ID!]!, $lines: [CountInput!]!) {\n    recordCounts(tourId: $tourId, showIds: $showIds, lines: $lines) {\n      __typename\n      ... on CountSheet { showId }\n      ... on CountRefusal { sentence }\n    }\n  }\n"): typeof import('./graphql.js').RecordCountsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation CorrectCount($id: ID!, $sent: Int!, $returned: Int!, $damaged: Int!, $reason: String!) {\n    correctCount(id: $id, sent: $sent, returned: $returned, damaged: $damaged, reason: $reason) { showId }\n  }\n"): typeof import('./graphql.js').CorrectCountDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation TakeCountBack($id: ID!, $reason: String!) { takeCountBack(id: $id, reason: $reason) { showId } }"): typeof import('./graphql.js').TakeCountBackDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Dates($first: Int, $after: String, $depot: String, $tour: String, $kind: String, $days: Int) {\n    examinedItems(first: $first, after: $after, depot: $depot, tour: $tour, kind: $kind, days: $days) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model place dueOn dueState state count } }\n    }\n  }\n"): typeof import('./graphql.js').DatesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query DatesChoices { depots tours(first: 200) { edges { node { id name } } } }"): typeof import('./graphql.js').DatesChoicesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Proposals($after: String) {\n    proposals(first: 50, after: $after) {\n      totalCount\n      newest\n      holdsOwn\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind subject itemId sentence proposedBy proposedAt reason isOwn figures { name was wanted } } }\n    }\n  }\n"): typeof import('./graphql.js').ProposalsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query HowManyWait { proposals(first: 1) { totalCount } }"): typeof import('./graphql.js').HowManyWaitDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query WaitsOfItem($id: ID!) { proposalsOfItem(itemId: $id) { id kind subject sentence proposedBy figures { name was wanted } } }"): typeof import('./graphql.js').WaitsOfItemDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query WaitsOfCatalogue { proposalsOfCatalogue { id kind subject sentence proposedBy figures { name was wanted } } }"): typeof import('./graphql.js').WaitsOfCatalogueDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation AnswerProposals($ids: [ID!], $through: ID, $accept: Boolean!, $reason: String!) { answerProposals(ids: $ids, through: $through, accept: $accept, reason: $reason) }"): typeof import('./graphql.js').AnswerProposalsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation AnswerAllProposals($through: ID!, $accept: Boolean!, $reason: String!) { answerAllProposals(through: $through, accept: $accept, reason: $reason) { id } }"): typeof import('./graphql.js').AnswerAllProposalsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query ProposalAnswering { latestProposalAnswering { id accept reason askedBy isGoing total answered looked leftBecause seconds } }"): typeof import('./graphql.js').ProposalAnsweringDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query ShowsToServe { tours(first: 100) { edges { node { id name showNames { showId name } } } } }"): typeof import('./graphql.js').ShowsToServeDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query FirstDayFor($tourId: ID!, $showId: ID!, $from: String!, $days: Int!) {\n    firstDayFor(tourId: $tourId, showId: $showId, from: $from, days: $days)\n  }\n"): typeof import('./graphql.js').FirstDayForDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query FleetCalendar($from: String!, $days: Int!, $depot: String) {\n    depots\n    fleetCalendar(from: $from, days: $days, depot: $depot) { model count days { day free promised out short } }\n  }\n"): typeof import('./graphql.js').FleetCalendarDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query Remedies($model: String!, $day: String!, $depot: String) { remedies(model: $model, day: $day, depot: $depot) { serial kind sentence } }"): typeof import('./graphql.js').RemediesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query OpenHolds { openHolds { id name from to until items barred } }"): typeof import('./graphql.js').OpenHoldsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation PlaceHold($hold: HoldInput!) {\n    placeHold(hold: $hold) { __typename ... on Hold { id } ... on BookingRefusal { sentence } }\n  }\n"): typeof import('./graphql.js').PlaceHoldDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation GiveHoldBack($id: ID!) { giveHoldBack(id: $id) }"): typeof import('./graphql.js').GiveHoldBackDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query FaultSheet($itemId: ID!) {\n    faultSheet(itemId: $itemId) {\n      id kind model state count spare\n      faults { kind what then pieces moment by }\n      fliesIn { tourId showId show from load cart }\n    }\n  }\n"): typeof import('./graphql.js').FaultSheetDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query OpenFaults($planId: ID!) { openFaults(planId: $planId) { item kind what then pieces moment by } }"): typeof import('./graphql.js').OpenFaultsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation ReportFault($itemId: ID!, $kind: String!, $what: String!, $then: String!, $pieces: Int) {\n    reportFault(itemId: $itemId, kind: $kind, what: $what, then: $then, pieces: $pieces) { id }\n  }\n"): typeof import('./graphql.js').ReportFaultDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query FloorCode($planId: ID!, $code: String!) { floorCode(planId: $planId, code: $code) { id kind model count whyNot wantedSerials } }"): typeof import('./graphql.js').FloorCodeDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PrepSheet($planId: ID!) { prepSheet(planId: $planId) { uses { id kind model count depot inside } records { item kind agrees data moment by } } }"): typeof import('./graphql.js').PrepSheetDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation BenchTest($planId: ID!, $itemId: ID!, $failed: [String!]!, $remark: String!) { benchTest(planId: $planId, itemId: $itemId, failed: $failed, remark: $remark) }"): typeof import('./graphql.js').BenchTestDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ReadSplays($planId: ID!, $load: String!, $splays: [Float!]!) { readSplays(planId: $planId, load: $load, splays: $splays) }"): typeof import('./graphql.js').ReadSplaysDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation CountTrunk($planId: ID!, $trunk: ID!, $counts: [CountedInTrunk!]!) { countTrunk(planId: $planId, trunk: $trunk, counts: $counts) }"): typeof import('./graphql.js').CountTrunkDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query ReturnSheet($planId: ID!) { returnSheet(planId: $planId) { id kind model cart slot load back { moment by } seen { moment by with place } } }"): typeof import('./graphql.js').ReturnSheetDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ReturnCart($planId: ID!, $cart: ID!, $serials: [ID!]!) { returnCart(planId: $planId, cart: $cart, serials: $serials) { id } }"): typeof import('./graphql.js').ReturnCartDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ReturnItems($planId: ID!, $items: [ID!]!) { returnItems(planId: $planId, items: $items) { id } }"): typeof import('./graphql.js').ReturnItemsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query HangModels { catalogueModels { kind model data } }"): typeof import('./graphql.js').HangModelsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation AddLoadReading($planId: ID!, $hang: String!, $hole: String!, $place: String!, $readingKg: Float!) {\n    addLoadReading(planId: $planId, hang: $hang, hole: $hole, place: $place, readingKg: $readingKg) { readings { id } }\n  }\n"): typeof import('./graphql.js').AddLoadReadingDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query RiggingRecord($planId: ID!) {\n    riggingRecord(planId: $planId) {\n      readings { id hang hole place readingKg readAt readBy verdict sentence }\n      signOffs { id hang kind name remark company role place signedAt signedBy }\n    }\n  }\n"): typeof import('./graphql.js').RiggingRecordDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation SignOff($planId: ID!, $hang: String!, $kind: String!, $name: String!, $remark: String!, $outside: OutsideInput) {\n    signOff(planId: $planId, hang: $hang, kind: $kind, name: $name, remark: $remark, outside: $outside) { signOffs { id } }\n  }\n"): typeof import('./graphql.js').SignOffDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query HouseState { houseState { version upSince databaseBytes tables { name bytes rows changedInMonth grownBytes } sizes { day bytes } grownSince connections connectionsLimit connectionsOfOne lastBackup jobsWaiting jobsRunning jobsFailed oldestWaits plans { kind count seconds } requests turnedAway faults eventLoopMs diskFreeBytes processes } }"): typeof import('./graphql.js').HouseStateDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query InspectedItems($ids: [ID!], $kinds: [String!], $depots: [String!], $after: String) {\n    inspectedItems(ids: $ids, kinds: $kinds, depots: $depots, after: $after) { items hasMore }\n  }\n"): typeof import('./graphql.js').InspectedItemsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query RulesAndSeal { rules logSeal { head lines sealedAt } }"): typeof import('./graphql.js').RulesAndSealDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query SignOffs($planId: ID!) { riggingRecord(planId: $planId) { signOffs { hang kind name remark company role place signedAt signedBy } } }\n"): typeof import('./graphql.js').SignOffsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query ReportOfItem($id: ID!, $after: String) {\n    item(id: $id) {\n      records(first: 50, after: $after) {\n        pageInfo { hasNextPage endCursor }\n        edges { node { id examination recordedBy recordedAt reason file { name sha256 } kept lines } }\n      }\n    }\n  }\n"): typeof import('./graphql.js').ReportOfItemDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query LabelItems($search: String, $kind: String, $serials: [ID!], $after: String) {\n    items(search: $search, kind: $kind, serials: $serials, first: 200, after: $after) {\n      totalCount isMoreThanCounted\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model } }\n    }\n  }\n"): typeof import('./graphql.js').LabelItemsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query LentKit { lentKit { itemId kind model count depot owner lent barredBy } }"): typeof import('./graphql.js').LentKitDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation TakeInLentKit($kit: LentKitInput!) { takeInLentKit(kit: $kit) { itemId waits } }"): typeof import('./graphql.js').TakeInLentKitDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ClearLentPaper($itemId: ID!, $reason: String!) { clearLentPaper(itemId: $itemId, reason: $reason) }"): typeof import('./graphql.js').ClearLentPaperDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation GiveBackLentKit($itemId: ID!, $on: String!, $condition: String!) { giveBackLentKit(itemId: $itemId, on: $on, condition: $condition) }"): typeof import('./graphql.js').GiveBackLentKitDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query ModelsToTakeIn { catalogueModels { kind model } }"): typeof import('./graphql.js').ModelsToTakeInDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query LogLines($act: ID, $item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {\n    log(act: $act, item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 50, after: $after) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id sentence itemId tourId tourName showId moreRows rows { table key before after } } }\n    }\n  }\n"): typeof import('./graphql.js').LogLinesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query LogPeople { people { id name } }"): typeof import('./graphql.js').LogPeopleDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query LogTours { tours(first: 200) { edges { node { id name } } } }"): typeof import('./graphql.js').LogToursDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query LogActs($item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {\n    logActs(item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 40, after: $after) {\n      pageInfo { hasNextPage endCursor }\n      edges { node { id lines isMoreThanCounted line { id at doneAt who sentence itemId tourId tourName showId moreRows rows { table key before after } } } }\n    }\n  }\n"): typeof import('./graphql.js').LogActsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query LogSeal { logSeal { head lines sealedAt } }"): typeof import('./graphql.js').LogSealDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query BarredNow($id: ID!) { plan(id: $id) { flying { hang name inCharge } barred { itemId reason sentence loads hangs } doneAlthoughBarred { id tourId what hang sentence seen } } }"): typeof import('./graphql.js').BarredNowDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query ShowPage($tourId: ID!, $showId: ID!) {\n    showPage(tourId: $tourId, showId: $showId) {\n      tourId showId name tourName\n      released { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { code sentence } hangs trucks show { name venue from to number of } }\n      draft { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { code sentence } hangs trucks show { name venue from to number of } }\n      revisions { id state revision releasedAt releasedBy }\n    }\n  }\n"): typeof import('./graphql.js').ShowPageDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanProgress($id: ID!) { plan(id: $id) { ticks tickRemarks { what remark by } cartChecks { load checkedBy } } }"): typeof import('./graphql.js').PlanProgressDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanFindings($id: ID!) { plan(id: $id) { findings { code weight section subject date sentence fact } } }"): typeof import('./graphql.js').PlanFindingsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanCarts($id: ID!) { plan(id: $id) { carts } }"): typeof import('./graphql.js').PlanCartsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanPicks($id: ID!) { plan(id: $id) { picks } }"): typeof import('./graphql.js').PlanPicksDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanHang($id: ID!, $hang: String!) { plan(id: $id) { hang(hang: $hang) } }"): typeof import('./graphql.js').PlanHangDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanHardware($id: ID!) { plan(id: $id) { hardware } }"): typeof import('./graphql.js').PlanHardwareDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanTruckHead($id: ID!) { plan(id: $id) { truckHead } }"): typeof import('./graphql.js').PlanTruckHeadDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanTruck($id: ID!, $truck: String!) { plan(id: $id) { truck(truck: $truck) } }"): typeof import('./graphql.js').PlanTruckDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanDue($id: ID!) { plan(id: $id) { due } }"): typeof import('./graphql.js').PlanDueDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query WholePlan($id: ID!) { plan(id: $id) { plan } }"): typeof import('./graphql.js').WholePlanDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation MakePackPlan($tourId: ID!, $showId: ID!) {\n    makePackPlan(tourId: $tourId, showId: $showId, waitMs: 800) {\n      __typename\n      ... on PlanMade { planId }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n"): typeof import('./graphql.js').MakePackPlanDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation ReleasePackPlan($planId: ID!, $despite: String, $countersign: CountersignInput) {\n    releasePackPlan(planId: $planId, despite: $despite, countersign: $countersign) {\n      __typename\n      ... on PlanView { id revision }\n      ... on BookingRefusal { code sentence clashes { item from to tour } }\n      ... on StaleRefusal { code sentence changed { code sentence } }\n      ... on StopRefusal { code sentence stops { code sentence } needsOfficer }\n    }\n  }\n"): typeof import('./graphql.js').ReleasePackPlanDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanDifference($from: ID!, $to: ID!) { planDifference(from: $from, to: $to) { sentences hangsChanged boxes { hang position from to } } }"): typeof import('./graphql.js').PlanDifferenceDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation Tick($planId: ID!, $what: String!, $done: Boolean!, $remark: String) { tick(planId: $planId, what: $what, done: $done, remark: $remark) { id } }"): typeof import('./graphql.js').TickDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation ConfirmCart($planId: ID!, $load: String!, $serials: [String!]!) {\n    confirmCart(planId: $planId, load: $load, serials: $serials) { agrees slots { slot expected found agrees code sentence } barred { itemId sentence } }\n  }\n"): typeof import('./graphql.js').ConfirmCartDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SeeBarredAct($tourId: ID!, $id: ID!, $because: String!) { seeBarredAct(tourId: $tourId, id: $id, because: $because) }"): typeof import('./graphql.js').SeeBarredActDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation RecordExamination($itemId: ID!, $examination: AnyJson!, $supersedes: ID, $reason: String) {\n    recordExamination(itemId: $itemId, examination: $examination, supersedes: $supersedes, reason: $reason) { summary { id dueOn } }\n  }\n"): typeof import('./graphql.js').RecordExaminationDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query ExaminationRulesOnFile { rules }"): typeof import('./graphql.js').ExaminationRulesOnFileDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query ItemRecords($id: ID!, $after: String) {\n    item(id: $id) {\n      records(first: 20, after: $after) {\n        pageInfo { hasNextPage endCursor }\n        edges { node { id examination recordedBy recordedAt supersededBy supersedes reason file { id name type sizeBytes sha256 } kept lines } }\n      }\n    }\n  }\n"): typeof import('./graphql.js').ItemRecordsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query ItemHistory($id: ID!, $after: String) {\n    item(id: $id) {\n      history(first: 20, after: $after) { pageInfo { hasNextPage endCursor } edges { node { at who what sentence } } }\n    }\n  }\n"): typeof import('./graphql.js').ItemHistoryDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query ItemPage($id: ID!) {\n    item(id: $id) {\n      item\n      summary { id kind model state depot count place dueOn dueState }\n      promises { tour from to count }\n    }\n  }\n"): typeof import('./graphql.js').ItemPageDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation Quarantine($itemId: ID!, $reason: String!) { quarantine(itemId: $itemId, reason: $reason) { summary { id state } } }"): typeof import('./graphql.js').QuarantineDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ReleaseFromQuarantine($itemId: ID!, $reason: String!) { releaseFromQuarantine(itemId: $itemId, reason: $reason) { summary { id state } } }"): typeof import('./graphql.js').ReleaseFromQuarantineDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation RecordIncident($itemId: ID!, $on: String!, $what: String!) { recordIncident(itemId: $itemId, on: $on, what: $what) { summary { id } } }"): typeof import('./graphql.js').RecordIncidentDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation ChangeItems($ids: [ID!]!, $cells: [CellInput!]!, $reason: String) {\n    changeItems(ids: $ids, cells: $cells, reason: $reason) {\n      __typename\n      ... on ManyChanged { changed unchanged waits { id sentence } }\n      ... on ManyRefusal { refused { id column value wanted } }\n    }\n  }\n"): typeof import('./graphql.js').ChangeItemsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Items($search: String, $kind: String, $state: String, $model: String, $depot: String, $sort: String, $descending: Boolean, $after: String) {\n    items(search: $search, kind: $kind, state: $state, model: $model, depot: $depot, sort: $sort, descending: $descending, first: 50, after: $after) {\n      totalCount isMoreThanCounted\n      pageInfo { hasNextPage endCursor }\n      edges { node { id kind model state depot count place dueOn dueState } }\n    }\n  }\n"): typeof import('./graphql.js').ItemsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query RegisterDepots { depots }"): typeof import('./graphql.js').RegisterDepotsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query LotSplits($itemId: ID!) { lotSplits(itemId: $itemId) { parentId childId pieces ofPieces state reason madeBy madeAt } }"): typeof import('./graphql.js').LotSplitsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation SplitLot($itemId: ID!, $pieces: Int!, $state: String!, $reason: String!) {\n    splitLot(itemId: $itemId, pieces: $pieces, state: $state, reason: $reason) { taken left }\n  }\n"): typeof import('./graphql.js').SplitLotDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query Models { catalogueModels { kind model itemCount data } riggingSystems rules }"): typeof import('./graphql.js').ModelsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation CorrectSerial($itemId: ID!, $serial: String!, $reason: String!) { correctSerial(itemId: $itemId, serial: $serial, reason: $reason) { summary { id } } }"): typeof import('./graphql.js').CorrectSerialDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SaveLoadRule($rule: ModelJson!, $was: ModelJson, $reason: String) { saveLoadRule(rule: $rule, was: $was, reason: $reason) }"): typeof import('./graphql.js').SaveLoadRuleDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ApproveRiggingSystem($id: ID!) { approveRiggingSystem(id: $id) }"): typeof import('./graphql.js').ApproveRiggingSystemDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SaveRiggingSystem($system: ModelJson!, $was: ModelJson) { saveRiggingSystem(system: $system, was: $was) }"): typeof import('./graphql.js').SaveRiggingSystemDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query WearRules { rules }"): typeof import('./graphql.js').WearRulesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation AddExaminationRules($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }"): typeof import('./graphql.js').AddExaminationRulesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation RemoveExaminationRule($rule: ModelJson!, $reason: String!) { removeExaminationRule(rule: $rule, reason: $reason) }"): typeof import('./graphql.js').RemoveExaminationRuleDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query ExaminationRuleEditions { examinationRuleEditions { id was wanted reason madeBy madeAt } }"): typeof import('./graphql.js').ExaminationRuleEditionsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation AddExaminationRule($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }"): typeof import('./graphql.js').AddExaminationRuleDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation ChangeExaminationRule($was: ModelJson!, $rule: ModelJson!, $reason: String!) { changeExaminationRule(was: $was, rule: $rule, reason: $reason) }"): typeof import('./graphql.js').ChangeExaminationRuleDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query PlanImprovement($planId: ID!) { planImprovement(planId: $planId) { code sentence } }"): typeof import('./graphql.js').PlanImprovementDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation TakeImprovement($planId: ID!) {\n    takeImprovement(planId: $planId) { __typename ... on PlanMade { planId } ... on StaleRefusal { sentence changed { sentence } } }\n  }\n"): typeof import('./graphql.js').TakeImprovementDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query LatestSearch($tourId: ID!, $showId: ID!) { latestJob(kind: \"search\", tourId: $tourId, showId: $showId) { id state progress sentence askedBy } }"): typeof import('./graphql.js').LatestSearchDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation StartSearch($tourId: ID!, $showId: ID!) { startSearch(tourId: $tourId, showId: $showId) { id state } }"): typeof import('./graphql.js').StartSearchDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation StopSearch($id: ID!) { cancelJob(id: $id) { id state } }"): typeof import('./graphql.js').StopSearchDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query LatestMaking($tourId: ID!, $showId: ID!) { latestJob(kind: \"make\", tourId: $tourId, showId: $showId) { id state progress askedBy } }"): typeof import('./graphql.js').LatestMakingDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation StopMaking($id: ID!) { cancelJob(id: $id) { id state } }"): typeof import('./graphql.js').StopMakingDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation SwapBox($planId: ID!, $serial: String!, $reason: String!) {\n    swapBox(planId: $planId, serial: $serial, reason: $reason, waitMs: 800) {\n      __typename\n      ... on SwapResult { draftId marked difference { sentences } }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n"): typeof import('./graphql.js').SwapBoxDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query WhyHere($id: ID!, $load: String!, $slot: Int) { whyHere(planId: $id, load: $load, slot: $slot) { code sentence } }"): typeof import('./graphql.js').WhyHereDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Attention($role: String!, $after: String) {\n    attention(role: $role, first: 30, after: $after) {\n      totalCount showCount plannedCount\n      pageInfo { hasNextPage endCursor }\n      edges { node { weight code subject date sentence tourId showId show itemId } }\n    }\n  }\n"): typeof import('./graphql.js').AttentionDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query AnyTour { tours(first: 1) { edges { node { id } } } items(first: 1) { edges { node { id } } } }"): typeof import('./graphql.js').AnyTourDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query BetweenShows($tourId: ID!) { betweenShows(tourId: $tourId) { from to what } }"): typeof import('./graphql.js').BetweenShowsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query Tour($id: ID!) { tour(id: $id) { id version tour removedShows { showId name from to removedOn removedBy revisions } } showStates(tourId: $id) { showId state revision stops looks } }"): typeof import('./graphql.js').TourDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation SaveTour($tour: TourJson!, $expectedVersion: Int) { saveTour(tour: $tour, expectedVersion: $expectedVersion) { id version tour } }"): typeof import('./graphql.js').SaveTourDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query HouseRules { rules items(kind: \"truck\", first: 100) { edges { node { id model depot } } } }"): typeof import('./graphql.js').HouseRulesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Tours($after: String) {\n    tours(first: 50, after: $after) { pageInfo { hasNextPage endCursor } edges { node { id name prepFrom returnTo shows } } }\n  }\n"): typeof import('./graphql.js').ToursDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query TakenAlong($tourId: ID!, $showId: ID) { takenAlong(tourId: $tourId, showId: $showId) { shows hangs boxes drafts inForce revisions givenBack } }\n"): typeof import('./graphql.js').TakenAlongDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation RemoveShow($tourId: ID!, $showId: ID!, $expectedVersion: Int!) { removeShow(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }\n"): typeof import('./graphql.js').RemoveShowDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation PutShowBack($tourId: ID!, $showId: ID!, $expectedVersion: Int!) { putShowBack(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }\n"): typeof import('./graphql.js').PutShowBackDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation RemoveTour($tourId: ID!, $expectedVersion: Int!) { removeTour(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }\n"): typeof import('./graphql.js').RemoveTourDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation PutTourBack($tourId: ID!, $expectedVersion: Int!) { putTourBack(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }\n"): typeof import('./graphql.js').PutTourBackDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query RemovedTours { removedTours { id name prepFrom returnTo version removedOn removedBy revisions } }\n"): typeof import('./graphql.js').RemovedToursDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation ChooseVenue($tourId: ID!, $showId: ID!, $venueId: ID) { chooseVenue(tourId: $tourId, showId: $showId, venueId: $venueId) }\n"): typeof import('./graphql.js').ChooseVenueDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query ShowVenue($tourId: ID!, $showId: ID!) { venues { id venue } venueOfShow(tourId: $tourId, showId: $showId) { id } }\n"): typeof import('./graphql.js').ShowVenueDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query HardwareModels { catalogueModels { kind model } }"): typeof import('./graphql.js').HardwareModelsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query TravellingKit {\n    trucks: items(kind: \"truck\", first: 100) { edges { node { id model } } }\n    cases: items(kind: \"case\", first: 200) { edges { node { id model } } }\n  }\n"): typeof import('./graphql.js').TravellingKitDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query TourPlaces($tourId: ID!) {\n    tourPlaces(tourId: $tourId) {\n      places { place hasRules judgedBy decisions { rulesOf because decidedBy decidedAt } }\n      ruled\n      home\n    }\n  }\n"): typeof import('./graphql.js').TourPlacesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation AnswerPlace($tourId: ID!, $place: String!, $rulesOf: String, $reason: String!) {\n    answerPlace(tourId: $tourId, place: $place, rulesOf: $rulesOf, reason: $reason) { home }\n  }\n"): typeof import('./graphql.js').AnswerPlaceDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query WholeTour($tourId: ID!) { wholeTour(tourId: $tourId) { plan madeAt madeBy } }"): typeof import('./graphql.js').WholeTourDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation PlanWholeTour($tourId: ID!, $depot: Float!, $dock: Float!, $fixedUntil: Int!) {\n    planWholeTour(tourId: $tourId, depot: $depot, dock: $dock, fixedUntil: $fixedUntil, waitMs: 800) {\n      __typename\n      ... on TourPlanned { tourId }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n"): typeof import('./graphql.js').PlanWholeTourDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query CsvImport($id: ID!) { csvImport(id: $id) { id of dryRun askedBy askedAt state step rowsTotal rowsChecked rowsWritten rowsDated seconds code outcome { rows added changed unchanged failed waiting faulty firstAdded firstFailed firstChanged { id what } firstWaiting faults { column wanted count rows first { row value } } } } }"): typeof import('./graphql.js').CsvImportDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query LatestCsvImports { latestCsvImports { id of dryRun askedBy askedAt state rowsTotal seconds } }"): typeof import('./graphql.js').LatestCsvImportsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation CancelCsvImport($id: ID!) { cancelCsvImport(id: $id) { id state } }"): typeof import('./graphql.js').CancelCsvImportDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation KeepRow($planId: ID!, $truck: String!, $row: Int!) {\n    keepRow(planId: $planId, waitMs: 800, truck: $truck, row: $row) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').KeepRowDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation KeepLoaded($planId: ID!) {\n    keepLoaded(planId: $planId, waitMs: 800) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').KeepLoadedDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation KeepPieces($planId: ID!, $pieces: [String!]!) {\n    keepPieces(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').KeepPiecesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation LetPiecesGo($planId: ID!, $pieces: [String!]) {\n    letPiecesGo(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').LetPiecesGoDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation WaiveOrder($planId: ID!, $piece: String!, $reason: String!) {\n    waiveOrder(planId: $planId, waitMs: 800, piece: $piece, reason: $reason) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').WaiveOrderDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation EndWaiver($planId: ID!, $piece: String!) {\n    endWaiver(planId: $planId, waitMs: 800, piece: $piece) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').EndWaiverDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation TakeCase($planId: ID!, $case: String!) {\n    takeCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').TakeCaseDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation LeaveCase($planId: ID!, $case: String!) {\n    leaveCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').LeaveCaseDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation SetGroupEnd($planId: ID!, $group: String!, $end: String) {\n    setGroupEnd(planId: $planId, waitMs: 800, group: $group, end: $end) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }\n  }\n"): typeof import('./graphql.js').SetGroupEndDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query RowSwap($planId: ID!, $truck: String!, $first: Int!, $second: Int!) {\n    rowSwap(planId: $planId, truck: $truck, first: $first, second: $second) {\n      first second sideBeforeMm sideAfterMm axles { axle beforeKg afterKg limitKg } breaches { piece mayBeWaived sentence }\n    }\n  }\n"): typeof import('./graphql.js').RowSwapDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation SwapRows($planId: ID!, $truck: String!, $first: Int!, $second: Int!, $reason: String) {\n    swapRows(planId: $planId, waitMs: 800, truck: $truck, first: $first, second: $second, reason: $reason) {\n      __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } }\n    }\n  }\n"): typeof import('./graphql.js').SwapRowsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation TakePieceAlong($planId: ID!, $piece: String!) {\n    takePieceAlong(planId: $planId, piece: $piece, waitMs: 800) {\n      __typename\n      ... on LoadingDone { draftId changes }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n"): typeof import('./graphql.js').TakePieceAlongDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation LeavePiece($planId: ID!, $piece: String!, $reason: String!) {\n    leavePiece(planId: $planId, piece: $piece, reason: $reason, waitMs: 800) {\n      __typename\n      ... on LoadingDone { draftId changes }\n      ... on PlanningRefusal { code sentence reasons }\n      ... on JobUnderWay { job { id state progress } }\n    }\n  }\n"): typeof import('./graphql.js').LeavePieceDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query Venues { venues { id version venue shows { tourId showId } } }"): typeof import('./graphql.js').VenuesDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation SaveVenue($id: ID, $venue: VenueJson!, $expectedVersion: Int) { saveVenue(id: $id, venue: $venue, expectedVersion: $expectedVersion) { id } }\n"): typeof import('./graphql.js').SaveVenueDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Visits($from: String!, $to: String!, $depot: String) {\n    depots\n    visits(from: $from, to: $to, depot: $depot) { id onDay depot placeName state remark entered version list }\n    showsInSeason(from: $from, to: $to) { tourId showId name from to }\n  }\n"): typeof import('./graphql.js').VisitsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query VisitSeason($from: String!, $to: String!, $depot: String, $withIdle: Boolean!, $without: [ID!]!, $check: String) {\n    visitSeason(from: $from, to: $to, depot: $depot, withIdle: $withIdle, without: $without, check: $check) { answer without names { id kind model } }\n  }\n"): typeof import('./graphql.js').VisitSeasonDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query CountedUse($depot: String) { countedUse(depot: $depot) { itemId kind model depot jurisdiction basis every since count isDue } }\n"): typeof import('./graphql.js').CountedUseDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation AddVisitDays($days: [PossibleDayInput!]!) { addVisitDays(days: $days) }"): typeof import('./graphql.js').AddVisitDaysDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation AgreeVisits($from: String!, $to: String!, $depot: String, $visits: [ID!]!) { agreeVisits(from: $from, to: $to, depot: $depot, visits: $visits) }\n"): typeof import('./graphql.js').AgreeVisitsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation MoveVisit($id: ID!, $onDay: String!, $expectedVersion: Int!) { moveVisit(id: $id, onDay: $onDay, expectedVersion: $expectedVersion) }\n"): typeof import('./graphql.js').MoveVisitDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation CancelVisit($id: ID!, $expectedVersion: Int!) { cancelVisit(id: $id, expectedVersion: $expectedVersion) }"): typeof import('./graphql.js').CancelVisitDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query VisitList($id: ID!) {\n    visitList(id: $id) {\n      visit { id onDay placeName state list entered version }\n      items { id kind model place intervals rules }\n      lines { itemId examinationId outcome report remark }\n    }\n  }\n"): typeof import('./graphql.js').VisitListDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  mutation EnterVisitResults($id: ID!, $examiner: String!, $reportFile: ID, $lines: [VisitResultInput!]!) {\n    enterVisitResults(id: $id, examiner: $examiner, reportFile: $reportFile, lines: $lines) { visit { entered } }\n  }\n"): typeof import('./graphql.js').EnterVisitResultsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query OwnCalendars { ownCalendars { id depot madeAt } }"): typeof import('./graphql.js').OwnCalendarsDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation RenewCalendar($depot: String) { renewCalendar(depot: $depot) }"): typeof import('./graphql.js').RenewCalendarDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation WithdrawCalendar($id: ID!) { withdrawCalendar(id: $id) }"): typeof import('./graphql.js').WithdrawCalendarDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "\n  query Me { me { id name role mustChange deputyships { officer until depot tourId } onePerson { since until by reason endedBecause } } }\n"): typeof import('./graphql.js').MeDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query JobState($id: ID!) { job(id: $id) { id state progress } }"): typeof import('./graphql.js').JobStateDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "mutation CancelJob($id: ID!) { cancelJob(id: $id) { id state progress } }"): typeof import('./graphql.js').CancelJobDocument;
/**
 * The graphql function is used to parse GraphQL queries into a document that can be used by GraphQL clients.
 */
export function graphql(source: "query RuledPlaces { rules }"): typeof import('./graphql.js').RuledPlacesDocument;


export function graphql(source: string) {
  return (documents as any)[source] ?? {};
}
