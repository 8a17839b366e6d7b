package withers.report.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.SHELTER;
import static withers.report.Coast.TIDELINE;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.assertj.core.api.ThrowingConsumer;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.finding.Band;
import withers.finding.Evidence.Part;
import withers.finding.FindingKind;
import withers.finding.Who;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Samples;
import withers.report.csv.ListCsv;
import withers.report.html.Pages;
import withers.report.list.FollowUpList;
import withers.report.list.FollowUpLists;
import withers.report.text.Texts;

/** A whole list as its reader reads it. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PlainListTest {
  private final Texts texts = Texts.in(Locale.UK);
  private final Coast coast = new Coast();

  @Test
  void a_list_reads_from_the_most_urgent_to_the_least() {
    Who mara = coast.person(CLINIC, Samples.MARA);
    Who adopter = coast.person(SHELTER, Coast.contact("Ida Thorne", "+1 212 555 0171"));
    Who stranger = coast.person(TIDELINE, Coast.contact("Jonas Abel", "+1 212 555 0161"));
    FindingStory found =
        FindingStory.of(FindingKind.FOUND_WAITING, CLINIC, 1001)
            .named("Biscuit")
            .band(Band.TODAY)
            .with(adopter)
            .registered(TIDELINE, stranger)
            .because(Part.REGISTERED_TO, "2025-06-20", TIDELINE, "T-9", stranger)
            .because(Part.FOUND, "2026-02-27", CLINIC, "P-17", new Who.Organisation(CLINIC));
    FindingStory behind =
        FindingStory.of(FindingKind.CONTACT_BEHIND, CLINIC, 1003)
            .record("P-19")
            .with(mara)
            .inferred()
            .registered(TIDELINE, stranger)
            .because(Part.SEEN_WITH, "2025-10-02", CLINIC, "P-19", mara);

    String list =
        PlainList.of(
            FollowUpLists.of(Coast.run(found, behind), Coast.DIRECTORY, coast.vault, texts).get(0),
            texts);

    assertThat(list.replace('\u00a0', '_'))
        .isEqualTo(
            """
            Follow-ups for Harbour Vets
            As the records stood on 1 March 2026

            2 animals to follow up. 2 new, 0 still open, 0 settled since last time.

            For Harbour Vets only. This page names people. Keep it as you keep your own client records, and delete it when you are done.

            * Records that differ prove neither who owns an animal nor that anyone did wrong.
            * Contact people only as privacy law allows, and only about this.
            * Local law and the rules of the registry come first.
            Send the sheet back with what came of each.
            This message was made by a program. Your coordinator reads the answers.

            Today
            =====
            An animal is waiting. Please start with these.

            Find the people of a found animal
            ---------------------------------
            The records name someone to ask. Each day counts.
            Take care: Release an animal only as local law, the stray-hold period and proof of ownership allow. This list is no such proof.

            Biscuit, dog (New)
            Chip: 999000000001001
            Your record: P-17
            Reference: 38WJ-K7YM
            Biscuit was found and has been waiting since 27 February 2026. The records name someone to ask.
            Who to call:
            - Tideline (keeps the registration): +1 212 555 0130
            - Dune Shelter (has the details of the person who had the animal last): +1 212 555 0120
            What to do:
            1. Call Tideline. Give number 999_000_000_001_001 and ask them to reach the registered contact.
            2. Call Dune Shelter. Ask them to reach the person who had Biscuit last.
            3. Scan the whole body again, slowly, with a reader for all frequencies. There may be a second chip.
            4. When Biscuit is back with its people or has found a new place, enter it in your records.
            What the records say:
            - On 20 June 2025, chip 999_000_000_001_001 was registered to a person. The registry has the details. Source: Tideline, record T-9, sent on 23 June 2025.
            - On 27 February 2026, the animal with chip 999_000_000_001_001 was reported found. Source: your own record P-17, sent on 2 March 2026 (patients.csv, line 12).

            This week
            =========
            If one of these animals were lost now, its people could hardly be reached.

            Have the registered contact changed
            -----------------------------------
            Whoever finds the animal will call the registered contact. That is somebody from before.
            Take care: Give nobody the name, number or address of the other person.

            Unnamed dog (New)
            Chip: 999000000001003
            Your record: P-19
            Reference: ETQ3-WTNB
            The dog is with Mara Linden. The registration still names a person registered with Tideline.
            ! This follows from repeated visits or from details that match, not from a recorded hand-over. Ask before you change anything.
            Who to call:
            - Mara Linden (has the animal, by your record): +1 212 555 0151, (212) 555-0152, mara.linden@example.org, 3 Quay Steps, 10001 Saltmouth
            - Tideline (keeps the registration): +1 212 555 0130
            What to do:
            1. Call Mara Linden.
            2. Ask whether the dog still lives with them.
            3. If so: ask them to have themselves entered as the contact for number 999_000_000_001_003, with Tideline. The registry says what proof it needs.
            4. If not: put your own record right.
            What the records say:
            - On 2 October 2025, the animal was seen with Mara Linden. Source: your own record P-19, sent on 5 October 2025 (patients.csv, line 12).

            --\s
            Made by Withers from the records that the network’s members sent in. Run 2026-03-01-0123abcd.
            """);
  }

  @Test
  void damaged_numbers_have_one_thing_to_do_and_a_line_each() {
    List<FindingStory> stories = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      stories.add(
          FindingStory.damaged(CLINIC, "9.99E+14").record("P-" + (10 + i)).surviving("999", 0));
    }

    String list =
        PlainList.of(
            FollowUpLists.of(
                    Coast.run(stories.toArray(FindingStory[]::new)),
                    Coast.DIRECTORY,
                    coast.vault,
                    texts)
                .get(0),
            texts);

    assertThat(list)
        .contains(
            """
            Put damaged chip numbers right
            ------------------------------
            These numbers lost digits, or letters got into them. A record without its number can bring no animal home.
            Take care: Never fill in digits by guessing, nor from this list alone. A wrong number leads to somebody else’s animal.

            What to do:
            1. Did a spreadsheet do it? Then such numbers end in zeros, or read like 9.85E+14. Have the column of numbers exported as text.
            2. Take the export anew from the program that holds your records. A file saved by a spreadsheet has lost the digits for good.
            3. For a single number: read it from the chip or from the papers of the implant, and put your own record right.

            - Your record P-10, Unnamed dog (New), Reference\s""")
        .contains("- Your record P-34,")
        .doesNotContain("P-35")
        .contains("\n5 more such records are in the sheet.\n");
    assertThat(list.lines().filter(line -> line.startsWith("1. "))).hasSize(1);
  }

  @Test
  void of_very_many_a_page_and_a_mail_tell_the_first_and_the_sheet_has_all() {
    FindingStory[] stories =
        IntStream.range(0, 202)
            .mapToObj(i -> FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1000 + i))
            .map(story -> story.record("P-many"))
            .toArray(FindingStory[]::new);
    FollowUpList list =
        FollowUpLists.of(Coast.run(stories), Coast.DIRECTORY, coast.vault, texts).get(0);
    String more = "2 more such animals are in the sheet.";

    assertThat(PlainList.of(list, texts)).contains(more).satisfies(told(200));
    assertThat(new Pages(texts).list(list)).contains(more).satisfies(told(200));
    assertThat(new String(new ListCsv(texts).of(list), StandardCharsets.UTF_8))
        .satisfies(told(202));
  }

  private static ThrowingConsumer<String> told(int times) {
    return text -> assertThat(text.split("P-many", -1)).hasSize(1 + times);
  }
}
