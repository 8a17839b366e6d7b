package withers.report.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.COORDINATOR;
import static withers.report.Coast.SHELTER;
import static withers.report.mail.ReadBack.bytes;
import static withers.report.mail.ReadBack.parsed;
import static withers.report.mail.ReadBack.text;

import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.james.mime4j.dom.Entity;
import org.apache.james.mime4j.dom.Message;
import org.apache.james.mime4j.dom.Multipart;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.organisation.Organisation;
import withers.report.Coast;
import withers.report.Samples;
import withers.report.chart.Drawing;
import withers.report.html.Pages;
import withers.report.list.FollowUpList;
import withers.report.overview.Overview;
import withers.report.overview.Trends;
import withers.report.text.Texts;
import withers.report.xlsx.ListWorkbook;
import withers.workspace.MailSettings;
import withers.workspace.MailSettings.Details;

/** What Mime4j 0.8.14, an independent parser, finds in the coordinator's mail (RFC 2387, 2392). */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OverviewMailTest {
  private static final ZonedDateTime WRITTEN =
      ZonedDateTime.of(2026, 3, 1, 6, 30, 0, 0, ZoneOffset.UTC);
  private static final int LARGE = 10_240;

  private final Texts texts = Texts.in(Locale.UK);
  private final Samples samples = new Samples();
  private final Overview overview = samples.overview();
  private final Organisation coordinator = Coast.DIRECTORY.find(COORDINATOR).orElseThrow();

  @Test
  void it_is_text_and_a_page_with_the_charts_as_pictures() throws Exception {
    Message message = parsed(mail(List.of(), settings(Details.INCLUDED, LARGE)).content());

    assertThat(message.getSubject()).isEqualTo("Overview of Coast Network, 1 March 2026");
    assertThat(message.getMessageId())
        .isEqualTo("<withers.2026-03-01-0123abcd.coast-network@coast-network.example.org>");
    List<Entity> words = parts(parts(message).get(0));
    assertThat(parts(message)).hasSize(1);
    assertThat(words).map(Entity::getMimeType).containsExactly("text/plain", "multipart/related");
    List<Entity> related = parts(words.get(1));
    assertThat(related)
        .map(Entity::getMimeType)
        .containsExactly("text/html", "image/png", "image/png");
    String page = text(related.get(0));
    for (int i = 0; i < 2; i++) {
      Entity picture = related.get(i + 1);
      String id = picture.getHeader().getField("Content-ID").getBody();
      assertThat(page).contains("src=\"cid:%s\"".formatted(id.substring(1, id.length() - 1)));
      assertThat(bytes(picture))
          .isEqualTo(
              new Drawing(texts.locale()).png(Trends.of(overview, texts).get(i)).orElseThrow());
    }
    assertThat(page).doesNotContain("<svg", "<script", "http:", "https:");
  }

  @Test
  void the_text_says_what_matters_first() throws Exception {
    Message message = parsed(mail(List.of(), settings(Details.INCLUDED, LARGE)).content());

    assertThat(text(parts(parts(message).get(0)).get(0)))
        .isEqualTo(
            """
            Coast Network
            Overview for the coordinator
            As the records stood on 1 March 2026

            The records tell of 2,993 animals. 8 are to be followed up.
            Today: 1
            This week: 3
            This month: 3
            When possible: 1

            What changed
            New: 5
            Still open: 4
            Settled by new records: 1

            Who has something to do
            Dune Shelter: 1
            Harbour Vets: 7

            Who sent nothing lately
            Tideline
            Beacon
            Dune Shelter

            --\s
            Made by Withers from the records that the network’s members sent in. Run 2026-03-01-0123abcd.
            """);
  }

  @Test
  void the_coordinators_own_list_comes_with_it_and_is_no_second_mail() throws Exception {
    FollowUpList own = own();
    Mails mails = mails(List.of(own), settings(Details.INCLUDED, LARGE));
    Message message = parsed(mails.ready().get(COORDINATOR).content());

    assertThat(mails.ready()).containsOnlyKeys(COORDINATOR);
    List<Entity> parts = parts(message);
    assertThat(parts)
        .map(Entity::getFilename)
        .containsExactly(null, "follow-ups-2026-03-01.html", "follow-ups-2026-03-01.xlsx");
    assertThat(text(parts.get(1))).isEqualTo(new Pages(texts).mailed(own));
    assertThat(text(parts(parts.get(0)).get(0)))
        .startsWith("Your own list, of 7 animals, is enclosed as a page and as a sheet.\n\n");
  }

  @Test
  void what_may_not_or_cannot_be_enclosed_is_left_out_and_that_is_said() throws Exception {
    for (MailSettings settings :
        List.of(settings(Details.LEFT_OUT, LARGE), settings(Details.INCLUDED, 1))) {
      ReadyMail mail = mail(List.of(own()), settings);
      Message message = parsed(mail.content());

      assertThat(mail.isSummary()).isTrue();
      assertThat(parts(message)).map(Entity::getFilename).containsExactly((String) null);
      assertThat(text(parts(parts(message).get(0)).get(0)))
          .startsWith("7 animals to follow up. ")
          .contains("Please ask Coast Network");
    }
  }

  @Test
  void an_overview_too_large_for_a_mail_comes_as_text() throws Exception {
    ReadyMail mail = mail(List.of(), settings(Details.INCLUDED, 1));
    Message message = parsed(mail.content());

    assertThat(message.getMimeType()).isEqualTo("text/plain");
    assertThat(text(message)).startsWith("Coast Network\nOverview for the coordinator\n");
  }

  @Test
  void where_the_settings_keep_it_nothing_is_made_of_it() {
    MailSettings kept =
        new MailSettings(28, Details.INCLUDED, MailSettings.Overview.KEPT, LARGE, Optional.empty());

    assertThat(mails(samples.lists(texts), kept).ready()).containsOnlyKeys(CLINIC, SHELTER);
    assertThat(mails(samples.lists(texts), settings(Details.INCLUDED, LARGE)).ready())
        .containsOnlyKeys(CLINIC, COORDINATOR, SHELTER);
  }

  private FollowUpList own() {
    FollowUpList list = samples.lists(texts).get(1);
    return new FollowUpList(
        coordinator,
        list.run(),
        list.asOf(),
        list.bands(),
        list.questions(),
        list.since(),
        list.settled(),
        list.settledByPeople(),
        list.waiting(),
        list.backlog(),
        list.resting(),
        list.told());
  }

  private static MailSettings settings(Details details, int largestKib) {
    return new MailSettings(
        28, details, MailSettings.Overview.MAILED, largestKib, Optional.empty());
  }

  private ReadyMail mail(List<FollowUpList> lists, MailSettings settings) {
    return mails(lists, settings).ready().get(COORDINATOR);
  }

  private Mails mails(List<FollowUpList> lists, MailSettings settings) {
    Mailbag bag =
        new Mailbag(coordinator, "Coast Network", WRITTEN, texts, settings, (to, mail) -> mail);
    bag.add(overview, Coast.DIRECTORY, new Drawing(texts.locale()));
    lists.forEach(list -> bag.add(list, () -> new ListWorkbook(texts).of(list)));
    return bag.mails();
  }

  private static List<Entity> parts(Entity part) {
    return ((Multipart) part.getBody()).getBodyParts();
  }
}
