"""In which module each name of the usecases' door is at home."""

# Names in packed lines, as in the door itself.
# fmt: off
_NAMES = {
    "evidence": "data_version",
    "keep": "Difference",
    "label": "MOST_SLICES",
    "store": "KeptStep KeptTrial one_look",
    "usecases.asking.answer": "Answer Asked Explanation QuestionError",
    "usecases.asking.as_json": "Json plain",
    "usecases.bake.bake": "bake_formula",
    "usecases.bake.more": "bake_with_more",
    "usecases.bake.other": "OTHERWISE",
    "usecases.bake.page": "BakePage bake_shown",
    "usecases.bake.picture": "bake_svg draw_bake",
    "usecases.bake.places": "BakePlaces places_to_bake",
    "usecases.bake.result": "BakeBeside BakeLine BakeLines BakeResult BakeUnknown",
    "usecases.bake.wish": "BakeWish",
    "usecases.bench.bench": (
        "begin_at_bench bench_of ground_at_bench say_at_bench set_aside weighing_of"
    ),
    "usecases.bench.clocks": (
        "REASONS BenchClock BenchClocks clocks_at_bench clocks_beside start_at_bench stop_at_bench"
    ),
    "usecases.bench.cup": "CupNow cup_at_bench cup_limits keep_cup",
    "usecases.bench.heard": "ClockSaid CupSaid EndSaid hear_at_bench moment_said",
    "usecases.bench.result": "Bench BenchSaid",
    "usecases.bench.state": "Spot",
    "usecases.bench.ways": "BenchSlip BenchWay",
    "usecases.blend.blend": "choose_blend",
    "usecases.blend.hand": "BlendHand flours_at_hand",
    "usecases.blend.request": "BlendWish",
    "usecases.blend.result": (
        "BlendGluten BlendLine BlendOther BlendPremix BlendRecord BlendResult"
    ),
    "usecases.book.book": "BookResult init_book load_demo",
    "usecases.book.care": "back_up_book export_book import_book restore_book verify_book",
    "usecases.torte.build": "build_torte",
    "usecases.torte.fill": "FillWish fill_ring",
    "usecases.torte.fill_result": "FillResult",
    "usecases.torte.in_time": "TorteInTime build_in_time torte_in_time",
    "usecases.torte.moisture_result": "MoistureBase MoisturePart MoistureResult MoistureUntil",
    "usecases.torte.standing_result": "StandingPart StandingResult",
    "usecases.torte.result": "BuildLayer BuildResult",
    "usecases.calc": "SumList SumRow answer_sum list_sums",
    "usecases.formula.check": "CheckBand CheckFinding CheckResult check_formula",
    "usecases.bake.cooling": "CoolingResult RollWindow cooling_after",
    "usecases.bake.cooling_page": "cooling_of",
    "usecases.class_day": "ClassCream ClassDay ClassKits ClassLoads SeatNote",
    "usecases.bake.core_now": "CoreNow core_left",
    "usecases.cost.cost": "CostWish cost_of",
    "usecases.cost.result": "CostComponent CostResult",
    "usecases.plan.day_plan": "BookPlan DayView PlannedDay day_view plan_day_today",
    "usecases.eggs.eggs": "EggsWish eggs_of",
    "usecases.eggs.result": "EggBuy EggPack EggRow EggsResult",
    "usecases.health": "Health health_of",
    "usecases.pantry.ingredient_page": (
        "Content IngredientNow IngredientsFound NamedIngredient ingredient_now ingredients_found"
    ),
    "usecases.custard_page": "CustardLog CustardShown custard_shown",
    "usecases.keep.custard_way": "KeepCooling KeepDepth KeepVessel custard_way",
    "usecases.keep.fridge_off": "FridgeWish fridge_off",
    "usecases.keep.fridge_result": (
        "FridgeGrams FridgeOrder FridgePart FridgeRemake FridgeResult FridgeRule FridgeThing"
    ),
    "usecases.keep.frozen_way": "KeepFreezePart KeepFreezing",
    "usecases.keep.heated": "KeepHeat",
    "usecases.keep.road_way": "KeepRoad",
    "usecases.keep.shown": "differences_of keep_shown",
    "usecases.keep.typed": "typed_number",
    "usecases.keep.wished": "KeepWish keep_wished",
    "usecases.keep.keep": "KeepPart KeepPlace KeepResult keep_and_cool keep_of",
    "usecases.label.label": "LabelWish label_of",
    "usecases.label.paper": "label_sheets",
    "usecases.label.paper_sheet": "PrintWish",
    "usecases.label.nutrition": "NutritionWish",
    "usecases.label.result": (
        "LabelCarbohydrate LabelNutrition LabelOf LabelPanel LabelResult LabelRow"
    ),
    "usecases.oven.load_text": "read_load",
    "usecases.formula.matters": "CheckLine CheckRanking CheckTwice",
    "usecases.label_page": "LayoutName label_bytes layout_names",
    "usecases.order_page": "OrderPiece OrderQuestion OrderView order_view",
    "usecases.sheets.order_sheets": (
        "KeptSheet SheetBytes make_order_sheets sheet_bytes sheets_of_order"
    ),
    "usecases.sold.standing": "OrderStanding orders_of standing_of standings_of",
    "usecases.oven.oven": "OvenMoved OvenNext OvenReady OvenView oven_view",
    "usecases.oven.at_bench": "Awaited",
    "usecases.oven.choice": (
        "OvenChoice OvenChoices choice_for_oven others_if_in oven_choices tins_at_hand"
    ),
    "usecases.oven.load": "Load",
    "usecases.oven.loads": "loads_now probe_load put_back put_in take_out time_load",
    "usecases.own_oven.own_oven": "KnownOven known_oven",
    "usecases.own_oven.result": "OvenRecordShown OvenResult OvenShown",
    "usecases.own_oven.shown": "OvenWish ovens_of trial_counts",
    "usecases.oven.ovens_page": (
        "OvenNow OvensNow TinRow oven_now oven_settings ovens_now save_oven tin_words"
    ),
    "usecases.formula.own_formulas": "CheckOwn",
    "usecases.pantry.page": (
        "AskedTable LotRow PantryNow RoomNow asked_table evidence_words pantry_now room_now"
    ),
    "usecases.pantry.stops": "LotStop OrderStopped StockStop Stops",
    "usecases.plan.plan": "PlanWish plan_orders",
    "usecases.plan.result": "PlanLoad PlanResult PlanTask",
    "usecases.asking.read": (
        "ReadBaked ReadLine ReadOven ReadResult ReadUse TextLineRow read_formula"
    ),
    "usecases.book.rows": "RowConflictError RowNow TableNow add_row delete_row save_row table_now",
    "usecases.schema": "ANSWERS answer_type command_schema",
    "usecases.sheets.sheet": "card_bytes make_sheets",
    "usecases.sheets.result": "SheetFile SheetResult",
    "usecases.formula.size": "SizeWish size_formula",
    "usecases.formula.size_keep": "ParentNow SizeChoice is_new_size keep_size parent_now",
    "usecases.formula.size_result": "SizeOption SizeResult",
    "usecases.slip.slip": "SlipWish rescue_slip slip_sheet",
    "usecases.slip.lines": "SlipRow slip_rows",
    "usecases.slip.result": "SlipDeclined SlipHeld SlipOption SlipResult",
    "usecases.book.studio_settings": (
        "StudioSettings save_settings settings_now settings_text settings_wished units_of"
    ),
    "usecases.book.studio_tins": "keep_tins tins_typed",
    "usecases.tables.questions": "questions_of_table row_questions",
    "usecases.tables.upload": "TableChange keep_table table_change",
    "usecases.teach_page": "TeachFormula TeachHeat TeachLine TeachView teach_view",
    "usecases.book.texts": (
        "LineChange TextNow TextRow TextVersion answered_text bring_back delete_text differences "
        "save_text text_now texts_of versions_of"
    ),
    "usecases.pantry.to_buy": "ToBuy",
    "usecases.oven.together": "LoadWish TogetherWish bakes_together",
    "usecases.oven.together_result": "TogetherLoad TogetherResult",
    "usecases.today": "NextThing Today today_of",
    "usecases.torte.heights": (
        "Handle Heights HeightsNow asked_with_heights heights_of keep_heights"
    ),
    "usecases.torte_page": "TortePage TorteRow TorteSaid TorteUse torte_shown",
    "usecases.bench.trials": (
        "TrialRow drafted edit_trial end_as_trial trial_limits trial_numbers trial_row trial_rows "
        "trial_sheet"
    ),
    "usecases.trace.bags": "BagLine Bags BagsSaid marks_said",
    "usecases.trace.codes": "lot_code lot_codes",
    "usecases.trace.page": (
        "BatchNow CakeNow TraceHome batch_now cake_now trace_home trial_bags"
    ),
    "usecases.trace.record": (
        "Making correct_batch correct_cake earlier_batches last_code making_of write_making "
        "write_trial_batch"
    ),
    "usecases.trace.result": (
        "TraceBatch TraceCake TraceChange TraceFile TraceLine TraceRecall TraceResult"
    ),
    "usecases.trace.trace": "TraceWish trace_of",
    "usecases.vary.vary": "VaryWish vary_each vary_formula",
    "usecases.vary.choices": "VaryChoices choices_of",
    "usecases.vary.family": "FamilyWish vary_children",
    "usecases.vary.result": "VaryChange VaryChild VaryResult",
    "usecases.label.gluten": "GlutenWish gluten_of",
    "usecases.label.gluten_result": "GlutenLot GlutenPaper GlutenPiece GlutenResult GlutenRoom",
    "usecases.sheets.gluten_page": "gluten_page_bytes gluten_sheets",
    "usecases.sheets.trace_lists": "list_bytes trace_lists",
    "usecases.pantry.room_list": "RoomListResult RoomThing room_list_now room_list_of say_of_room",
    "usecases.sheets.verify": "verify_sheets",
}
# fmt: on

HOMES = {name: home for home, names in _NAMES.items() for name in names.split()}
"""The module of each name, below `krume`."""
