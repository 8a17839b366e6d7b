package withers.report.list;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.SHELTER;
import static withers.report.Coast.TIDELINE;
import static withers.report.Coast.contact;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.cases.CaseKey;
import withers.finding.Backlog;
import withers.finding.Evidence.Part;
import withers.finding.FindingKind;
import withers.finding.RunResult;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Samples;
import withers.report.html.Pages;
import withers.report.overview.Overview;
import withers.report.overview.Overviews;
import withers.report.text.Texts;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FollowUpListsTest {
  private final Texts texts = Texts.in(Locale.UK);
  private final Coast coast = new Coast();

  @Test
  void each_organisation_gets_what_it_can_act_on_by_band_and_by_what_has_to_be_done() {
    List<FollowUpList> lists = new Samples().lists(texts);

    assertThat(lists).map(list -> list.organisation().id()).containsExactly(SHELTER, CLINIC);
    assertThat(lists.get(1).bands())
        .map(
            section ->
                section.band().word()
                    + section.tasks().stream().map(task -> " " + task.kind().word()).toList())
        .containsExactly(
            "today[ found-waiting]",
            "this-week[ chips-diverge,  contact-behind]",
            "this-month[ records-behind,  unregistered,  number-damaged]",
            "when-possible[ details-differ]");
  }

  @Test
  void counts_what_is_new_still_open_settled_and_waiting_for_records() {
    FollowUpList clinic = new Samples().lists(texts).get(1);

    assertThat(clinic.size()).isEqualTo(7);
    assertThat(clinic.size(Mark.NEW)).isEqualTo(5);
    assertThat(clinic.size(Mark.OPEN)).isEqualTo(2);
    assertThat(clinic.settled()).isEqualTo(1);
    assertThat(clinic.waiting()).isEqualTo(1);
  }

  @Test
  void what_waits_of_a_backlog_is_not_listed_and_the_list_says_so() {
    RunResult run =
        Coast.run(
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1),
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 2),
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 3));
    Backlog backlog = new Backlog(CLINIC, Coast.TODAY, run.opened(), run.opened().subList(1, 3));

    FollowUpList list =
        FollowUpLists.of(with(run, backlog), Coast.DIRECTORY, coast.vault, texts).get(0);

    assertThat(list.size()).isEqualTo(1);
    assertThat(list.backlog()).contains(new FollowUpList.Beginning(Coast.TODAY, 3, 2));
    assertThat(new Pages(texts).list(list))
        .contains(
            "<p>3 of the follow-ups were there when your lists began, on 1 March 2026."
                + " Another 2 of these wait; they come up as these are settled."
                + " What is new is always listed.</p>");
  }

  private static RunResult with(RunResult run, Backlog backlog) {
    return new RunResult(
        run.id(),
        run.asOf(),
        run.knownBy(),
        run.animals(),
        run.findings(),
        run.notJudged(),
        run.questions(),
        run.opened(),
        run.stillOpen(),
        run.closed(),
        List.of(backlog),
        List.of(),
        List.of(),
        List.of());
  }

  @Test
  void what_is_counted_only_is_on_no_list_and_makes_none() {
    RunResult run =
        Coast.run(
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1),
            FindingStory.of(FindingKind.DETAILS_DIFFER, CLINIC, 2),
            FindingStory.of(FindingKind.DETAILS_DIFFER, SHELTER, 3));
    List<CaseKey> aside =
        run.opened().stream().filter(key -> key.rule().equals("details-differ")).toList();
    RunResult set =
        new RunResult(
            run.id(),
            run.asOf(),
            run.knownBy(),
            run.animals(),
            run.findings(),
            run.notJudged(),
            run.questions(),
            run.opened(),
            run.stillOpen(),
            run.closed(),
            run.backlogs(),
            aside,
            List.of(),
            List.of());

    List<FollowUpList> lists = FollowUpLists.of(set, Coast.DIRECTORY, coast.vault, texts);
    Overview overview = Overviews.of(set, Coast.background(List.of(), List.of()));

    assertThat(lists).map(list -> list.organisation().id()).containsExactly(CLINIC);
    assertThat(lists.get(0).size()).isEqualTo(1);
    assertThat(overview.followUps()).isEqualTo(3);
    assertThat(overview.followUps(FindingKind.DETAILS_DIFFER)).isEqualTo(2);
    assertThat(overview.countedOnly()).isEqualTo(2);
    assertThat(overview.organisations()).containsExactly(CLINIC);
    assertThat(new Pages(texts).overview(overview, Coast.DIRECTORY))
        .contains("2 of these are counted here only");
  }

  @Test
  void one_client_s_animals_stand_together_and_one_call_will_do() {
    Who mara = coast.person(CLINIC, Samples.MARA);
    Who jonas = coast.person(CLINIC, contact("Jonas Abel", "+1 212 555 0161"));
    RunResult run =
        Coast.run(
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1).with(mara),
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 2).with(jonas),
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 3).with(mara));

    List<FollowUp> followUps =
        FollowUpLists.of(run, Coast.DIRECTORY, coast.vault, texts).get(0).bands().stream()
            .flatMap(band -> band.tasks().stream())
            .flatMap(task -> task.followUps().stream())
            .toList();

    assertThat(followUps)
        .map(followUp -> followUp.calls().get(0).name())
        .containsExactly("Mara Linden", "Mara Linden", "Jonas Abel");
    assertThat(followUps.get(0).cautions())
        .contains(
            "The same person is called about %s too. One call will do for all."
                .formatted(followUps.get(1).reference()));
    assertThat(followUps.get(2).cautions()).noneMatch(text -> text.startsWith("The same"));
  }

  @Test
  void shows_own_clients_in_full() {
    FollowUp followUp =
        one(
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1)
                .named("Pip")
                .with(coast.person(CLINIC, Samples.MARA)));

    assertThat(followUp.wrong())
        .isEqualTo(
            "Pip is with Mara Linden. Chip 999\u00a0000\u00a0000\u00a0000\u00a0001 is not registered with any registry"
                + " that we can check.");
    assertThat(followUp.calls())
        .containsExactly(
            new Callee(
                "Mara Linden",
                "has the animal, by your record",
                List.of("+1 212 555 0151", "(212) 555-0152"),
                List.of("mara.linden@example.org"),
                "3 Quay Steps, 10001 Saltmouth"));
    assertThat(followUp.steps())
        .containsExactly(
            "Call Mara Linden.",
            "Ask whether Pip still lives with them, and whether the chip is registered anywhere.",
            "If it is registered nowhere: ask them to register number 999\u00a0000\u00a0000\u00a0000\u00a0001. If you"
                + " sold or gave the registration with the chip, send it in with them.",
            "If Pip lives elsewhere: put your own record right.");
  }

  @Test
  void masks_clients_of_others_and_names_who_has_their_details() {
    Who adopter = coast.person(SHELTER, contact("Ida Thorne", "+1 212 555 0171"));
    Who stranger = coast.person(TIDELINE, contact("Jonas Abel", "+1 212 555 0161"));
    FollowUp followUp =
        one(
            FindingStory.of(FindingKind.CONTACT_BEHIND, CLINIC, 2)
                .with(adopter)
                .registered(TIDELINE, stranger)
                .because(Part.REGISTERED_TO, "2022-05-01", TIDELINE, "T-10", stranger)
                .because(Part.WENT_TO, "2025-06-01", SHELTER, "A-204", adopter));

    assertThat(followUp.wrong())
        .isEqualTo(
            "The dog is with an adopter of Dune Shelter. The registration still names a person"
                + " registered with Tideline.");
    assertThat(followUp.calls()).map(Callee::name).containsExactly("Dune Shelter", "Tideline");
    assertThat(followUp.steps().get(0))
        .isEqualTo(
            "Call Dune Shelter. Say that it is about the person who has the dog, and ask them to"
                + " pass these questions on.");
    assertThat(followUp.evidence())
        .containsExactly(
            "On 1 May 2022, chip 999\u00a0000\u00a0000\u00a0000\u00a0002 was registered to a person. The registry has"
                + " the details. Source: Tideline, record T-10, sent on 4 May 2022.",
            "On 1 June 2025, the animal went to an adopter of Dune Shelter. Source: Dune Shelter,"
                + " record A-204, sent on 4 June 2025.");
    assertThat(followUp.toString()).doesNotContain("Ida", "Thorne", "Jonas", "Abel", "0171");
  }

  @Test
  void tells_a_handover_once_though_two_pieces_of_evidence_show_it() {
    Who mara = coast.person(CLINIC, Samples.MARA);
    FollowUp followUp =
        one(
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 2)
                .with(mara)
                .because(
                    Part.CAME_FROM, "2025-06-01", CLINIC, "P-17", new Who.Organisation(SHELTER))
                .because(Part.WENT_TO, "2025-06-01", CLINIC, "P-17", mara)
                .because(Part.PAIRED, "2025-06-01", CLINIC, "P-17", new Who.Nobody())
                .because(Part.PAIRED, "2025-06-01", CLINIC, "P-17", new Who.Nobody())
                .because(Part.WENT_TO, "2025-06-02", CLINIC, "P-17", mara));

    assertThat(followUp.evidence())
        .containsExactly(
            "On 1 June 2025, the animal went from Dune Shelter to Mara Linden. Source: your own"
                + " record P-17, sent on 4 June 2025 (patients.csv, line 12).",
            "On 1 June 2025, several chips were noted for this animal. Source: your own record P-17,"
                + " sent on 4 June 2025 (patients.csv, line 12).",
            "On 2 June 2025, the animal went to Mara Linden. Source: your own record P-17, sent on 5"
                + " June 2025 (patients.csv, line 12).");
  }

  @Test
  void says_since_when_a_found_animal_has_been_waiting() {
    FindingStory story = FindingStory.of(FindingKind.FOUND_WAITING, CLINIC, 2).named("Biscuit");
    assertThat(one(story).wrong())
        .isEqualTo("Biscuit was found and is waiting. The records name someone to ask.");

    story.because(Part.FOUND, "2026-02-27", CLINIC, "P-17", new Who.Organisation(CLINIC));
    assertThat(one(story).wrong())
        .isEqualTo(
            "Biscuit was found and has been waiting since 27 February 2026. The records name someone"
                + " to ask.");
  }

  @Test
  void says_of_forgotten_people_only_that_their_details_were_removed() {
    Who.Person forgotten = coast.person(CLINIC, Samples.MARA);
    coast.vault.forget(List.of(forgotten.reference()), List.of());
    FollowUp followUp =
        one(FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 3).named("Pip").with(forgotten));

    assertThat(followUp.wrong())
        .startsWith("Pip is with a person whose details were removed on request.");
    assertThat(followUp.calls()).isEmpty();
    assertThat(followUp.steps().get(0))
        .isEqualTo(
            "The person’s details were removed on request. Do not look for them. If they come in,"
                + " tell them in person.");
    assertThat(followUp.cautions())
        .containsExactly("Somebody’s details were removed on request. They stay removed.");
  }

  @Test
  void never_repeats_the_name_of_an_organisation_that_the_directory_does_not_know() {
    FollowUp followUp =
        one(
            FindingStory.of(FindingKind.CONTACT_BEHIND, CLINIC, 4)
                .with(coast.person(CLINIC, Samples.MARA))
                .registered(TIDELINE, new Who.Outside("Perhaps a person, after all")));

    assertThat(followUp.wrong())
        .isEqualTo(
            "The dog is with Mara Linden. The registration still names an organisation outside the"
                + " network.");
    assertThat(followUp.toString()).doesNotContain("Perhaps");
  }

  @Test
  void an_organisation_that_is_still_registered_itself_hands_the_registration_over() {
    FollowUp followUp =
        one(
            FindingStory.of(FindingKind.CONTACT_BEHIND, CLINIC, 5)
                .named("Tarn")
                .with(coast.person(CLINIC, Samples.MARA))
                .registered(TIDELINE, new Who.Organisation(CLINIC)));

    assertThat(followUp.wrong())
        .isEqualTo("Tarn is with Mara Linden. You are still the registered contact.");
    assertThat(followUp.steps().get(2))
        .isEqualTo(
            "If so: ask Tideline how you hand the registration of number 999\u00a0000\u00a0000\u00a0000\u00a0005 over. It is in"
                + " your name.");
  }

  @Test
  void says_where_the_reader_has_no_phone_and_warns_of_what_was_only_inferred() {
    FollowUp followUp =
        one(
            FindingStory.of(FindingKind.RECORDS_BEHIND, CLINIC, 6)
                .with(coast.person(CLINIC, contact("Rosa Quill")))
                .registered(TIDELINE, coast.person(TIDELINE, contact("Jonas Abel", "1")))
                .inferred());

    assertThat(followUp.steps().get(1))
        .isEqualTo(
            "Find another way to reach Rosa Quill: there is no phone number in your record.");
    assertThat(followUp.cautions())
        .containsExactly(
            "This follows from repeated visits or from details that match, not from a recorded"
                + " hand-over. Ask before you change anything.");
  }

  @Test
  void spells_out_which_details_differ() {
    FollowUp both =
        one(
            FindingStory.of(FindingKind.DETAILS_DIFFER, CLINIC, 7)
                .named("Wren")
                .with(coast.person(CLINIC, Samples.MARA))
                .differing("phone", "address"));

    assertThat(both.wrong())
        .isEqualTo(
            "Wren is registered to the right person. But these differ from your record: phone and"
                + " address.");
    assertThat(both.steps().get(1)).isEqualTo("Ask what is right today: phone and address.");
  }

  @Test
  void an_organisation_that_left_the_directory_is_named_by_its_id() {
    OrganisationId gone = new OrganisationId("old-clinic");
    FollowUp followUp =
        one(
            FindingStory.of(FindingKind.CONTACT_BEHIND, CLINIC, 8)
                .with(coast.person(gone, contact("Ida Thorne", "1"))));

    assertThat(followUp.wrong())
        .startsWith(
            "The dog is with a person in the records of an organisation that is no longer in the"
                + " directory (old-clinic).");
  }

  @Test
  void takes_signs_that_could_deceive_out_of_what_records_say() {
    FollowUp followUp =
        one(
            FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 9)
                .named("Pip\u202E\r\nBcc: x")
                .with(coast.person(CLINIC, contact("Mara\u0000 Linden\u2066", "1"))));

    assertThat(followUp.animal()).isEqualTo("Pip Bcc: x, dog");
    assertThat(followUp.calls()).map(Callee::name).containsExactly("Mara Linden");
  }

  @Test
  void a_reference_stays_the_same_from_run_to_run_and_differs_from_others() {
    FindingStory story = FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 10);

    assertThat(one(story).reference())
        .isEqualTo(one(story.named("Pip")).reference())
        .matches("[2-9A-HJ-NP-Z]{4}-[2-9A-HJ-NP-Z]{4}");
    assertThat(one(story.record("P-18")).reference())
        .isNotEqualTo(one(story.record("P-17")).reference());
  }

  @Test
  void a_run_without_findings_makes_no_lists() {
    assertThat(FollowUpLists.of(Coast.run(), Coast.DIRECTORY, coast.vault, texts)).isEmpty();
  }

  @Test
  void a_damaged_number_is_told_with_what_is_left_of_it_and_what_it_may_have_been() {
    assertThat(wrong(FindingStory.damaged(CLINIC, "9.99E+14").named("Moss").surviving("999", 0)))
        .isEqualTo(
            "Moss has the number 9.99E+14 in your record. Only its first digits are left: 999. No"
                + " number in other records begins like this.");
    assertThat(wrong(FindingStory.damaged(CLINIC, "9.99E+14").surviving("999", 1, 7)))
        .isEqualTo(
            "The dog has the number 9.99E+14 in your record. Only its first digits are left: 999."
                + " One number in other records begins like this: 999_000_000_000_007.");
    assertThat(wrong(FindingStory.damaged(CLINIC, "9.99E+14").surviving("999", 1234, 7, 8, 9)))
        .isEqualTo(
            "The dog has the number 9.99E+14 in your record. Only its first digits are left: 999."
                + " 1,234 numbers in other records begin like this. The first are"
                + " 999_000_000_000_007, 999_000_000_000_008 and 999_000_000_000_009.");
    assertThat(wrong(FindingStory.damaged(CLINIC, "99900000000OO07").readable(7, 8)))
        .isEqualTo(
            "The dog has the number 99900000000OO07 in your record. It may be meant as"
                + " 999_000_000_000_007 or 999_000_000_000_008.");
    assertThat(wrong(FindingStory.damaged(CLINIC, "99900000000OO07").readable(7).placed(7)))
        .isEqualTo(
            "The dog has the number 99900000000OO07 in your record. Other records know"
                + " 999_000_000_000_007, so for now we read it as that.");
  }

  private String wrong(FindingStory story) {
    return one(story).wrong().replace('\u00a0', '_');
  }

  @Test
  void a_damaged_number_calls_nobody_and_what_to_do_is_said_once() {
    RunResult run =
        Coast.run(
            FindingStory.damaged(CLINIC, "9.99E+14").record("P-1").surviving("999", 0),
            FindingStory.damaged(CLINIC, "9.98E+14").record("P-2").surviving("998", 0));
    Task task =
        FollowUpLists.of(run, Coast.DIRECTORY, coast.vault, texts)
            .get(0)
            .bands()
            .get(0)
            .tasks()
            .get(0);

    assertThat(task.isDoneOnce()).isTrue();
    assertThat(task.steps()).hasSize(3);
    assertThat(task.followUps()).allMatch(one -> one.steps().isEmpty() && one.calls().isEmpty());
    assertThat(task.followUps())
        .flatMap(one -> one.written().stream().toList())
        .containsExactly("9.99E+14", "9.98E+14");
    assertThat(task.followUps().get(0).evidence())
        .containsExactly("Sent like this since 28 February 2026 (patients.csv, line 12).");
    assertThat(task.followUps()).map(FollowUp::reference).doesNotHaveDuplicates();
  }

  private FollowUp one(FindingStory story) {
    RunResult run = Coast.run(story);
    FollowUpList list = FollowUpLists.of(run, Coast.DIRECTORY, coast.vault, texts).get(0);
    return list.bands().get(0).tasks().get(0).followUps().get(0);
  }
}
