package withers.report.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.COORDINATOR;
import static withers.report.Coast.SHELTER;
import static withers.report.mail.ReadBack.bytes;
import static withers.report.mail.ReadBack.parsed;
import static withers.report.mail.ReadBack.text;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.james.mime4j.dom.Entity;
import org.apache.james.mime4j.dom.Message;
import org.apache.james.mime4j.dom.Multipart;
import org.apache.james.mime4j.dom.address.Mailbox;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.organisation.Organisation;
import withers.report.Coast;
import withers.report.Samples;
import withers.report.html.Pages;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;
import withers.workspace.MailSettings;

/** What Mime4j 0.8.14, an independent parser, finds in the messages (RFC 5322, 2045 to 2049). */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ListMailTest {
  private static final ZonedDateTime WRITTEN =
      ZonedDateTime.of(2026, 3, 1, 6, 30, 0, 0, ZoneOffset.ofHours(1));

  private final Texts texts = Texts.in(Locale.UK);
  private final List<FollowUpList> lists = new Samples().lists(texts);
  private final Organisation sender = Coast.DIRECTORY.find(COORDINATOR).orElseThrow();

  @Test
  void the_header_says_who_writes_to_whom_about_what() throws Exception {
    Message message = parsed(mails(lists, "Küstennetz").ready().get(CLINIC).content());

    assertThat(message.getFrom())
        .containsExactly(new Mailbox("Küstennetz", "post", "coast-network.example.org"));
    assertThat(message.getTo().flatten())
        .containsExactly(new Mailbox("Harbour Vets", "post", "harbour-vets.example.org"));
    assertThat(message.getSubject())
        .isEqualTo("Follow-ups for Harbour Vets, 1 March 2026: 7 animals");
    assertThat(message.getDate()).isEqualTo(WRITTEN.toInstant());
    assertThat(message.getMessageId())
        .isEqualTo("<withers.2026-03-01-0123abcd.harbour-vets@coast-network.example.org>");
    assertThat(message.getHeader().getField("Date").getBody())
        .isEqualTo("Sun, 1 Mar 2026 06:30:00 +0100");
    assertThat(message.getHeader().getField("Auto-Submitted").getBody())
        .isEqualTo("auto-generated");
    assertThat(message.getHeader().getField("Content-Language").getBody()).isEqualTo("en");
    assertThat(message.getHeader().getField("MIME-Version").getBody()).isEqualTo("1.0");
  }

  @Test
  void the_body_is_text_and_page_with_the_workbook_attached() throws Exception {
    FollowUpList list = lists.get(1);
    Message message = parsed(mails(lists, "Coast Network").ready().get(CLINIC).content());

    assertThat(message.getMimeType()).isEqualTo("multipart/mixed");
    List<Entity> parts = ((Multipart) message.getBody()).getBodyParts();
    assertThat(parts)
        .map(Entity::getMimeType)
        .containsExactly(
            "multipart/alternative",
            "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
    List<Entity> words = ((Multipart) parts.get(0).getBody()).getBodyParts();
    assertThat(words).map(Entity::getMimeType).containsExactly("text/plain", "text/html");
    assertThat(text(words.get(0))).isEqualTo(PlainList.of(list, texts));
    assertThat(text(words.get(1))).isEqualTo(new Pages(texts).mailed(list));
    assertThat(parts.get(1).getFilename()).isEqualTo("follow-ups-2026-03-01.xlsx");
    assertThat(parts.get(1).getDispositionType()).isEqualTo("attachment");
    assertThat(bytes(parts.get(1))).startsWith('P', 'K');
  }

  @Test
  void lines_end_with_CR_LF_and_are_ASCII_no_longer_than_RFC_5322_allows() {
    byte[] mail = mails(lists, "Küstennetz").ready().get(CLINIC).content();
    String text = new String(mail, StandardCharsets.ISO_8859_1);

    assertThat(text.replace("\r\n", "")).doesNotContain("\r", "\n");
    assertThat(text.chars().allMatch(c -> c < 128)).isTrue();
    assertThat(text.lines()).allMatch(line -> line.length() <= 998);
  }

  @Test
  void the_same_list_makes_the_same_message() {
    String first = withoutWorkbook(mails(lists, "Coast Network").ready().get(CLINIC).content());
    String again = withoutWorkbook(mails(lists, "Coast Network").ready().get(CLINIC).content());

    assertThat(again).isEqualTo(first);
  }

  @Test
  void nothing_to_say_makes_no_mail() {
    FollowUpList silent =
        new FollowUpList(
            lists.get(0).organisation(),
            "run",
            Coast.TODAY,
            List.of(),
            List.of(),
            Optional.empty(),
            2,
            0,
            1,
            Optional.empty(),
            List.of(),
            List.of());

    Mails mails = mails(List.of(silent), "Coast Network");

    assertThat(mails.ready()).isEmpty();
    assertThat(mails.unaddressed()).isEmpty();
  }

  @Test
  void who_has_no_address_or_one_that_is_none_gets_no_mail_and_is_named() {
    for (Optional<String> mail :
        List.of(
            Optional.<String>empty(), Optional.of("post@example.org\r\nBcc: all@example.org"))) {
      Organisation shelter = withMail(lists.get(0).organisation(), mail);
      FollowUpList list = to(shelter, lists.get(0));

      Mails mails = mails(List.of(list, lists.get(1)), "Coast Network");

      assertThat(mails.ready()).containsOnlyKeys(CLINIC);
      assertThat(mails.unaddressed()).map(Organisation::id).containsExactly(SHELTER);
    }
  }

  @Test
  void without_an_address_of_the_sender_no_mail_can_be_made() {
    Organisation mute = withMail(sender, Optional.empty());

    assertThatThrownBy(
            () ->
                SampleMails.of(lists, mute, "Coast Network", WRITTEN, texts, MailSettings.DEFAULT))
        .hasMessage("Expected a mail address of coast-network, but found none");
    assertThat(Mails.canMail(mute)).isFalse();
    assertThat(Mails.canMail(sender)).isTrue();
  }

  @Test
  void no_name_can_add_a_line_to_the_header() throws Exception {
    Organisation odd =
        new Organisation(
            CLINIC,
            "Harbour\r\nBcc: all@example.org\r\n\r\nVets",
            lists.get(1).organisation().kind(),
            List.of(),
            lists.get(1).organisation().contact(),
            Optional.of("post@example.org"),
            List.of(),
            java.util.Set.of(),
            List.of());

    byte[] mail =
        mails(List.of(to(odd, lists.get(1))), "Coast\nCc: all@example.org")
            .ready()
            .get(CLINIC)
            .content();

    Message message = parsed(mail);
    assertThat(message.getBcc()).isNull();
    assertThat(message.getCc()).isNull();
    assertThat(message.getHeader().getFields())
        .map(field -> field.getName())
        .containsExactlyInAnyOrder(
            "From",
            "To",
            "Message-ID",
            "Subject",
            "MIME-Version",
            "Content-Type",
            "Date",
            "Auto-Submitted",
            "Content-Language");
  }

  /**
   * Line ends beyond ASCII, letters whose last byte is a line end, full-width twins, what looks
   * like an encoded word with a line end in it (RFC 2047), half a character, and a name of any
   * length.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Vets\u2028Bcc: all@example.org",
        "Vets\u2029Bcc: all@example.org",
        "Vets\u0085Bcc: all@example.org",
        "Vets\u000BBcc: all@example.org\u000C\u0000\u001B",
        "Vets\u010D\u010ABcc: all@example.org",
        "Vets\u560D\u560ABcc: all@example.org",
        "Vets\uFF02\uFF1E\uFF0C\uFF42\uFF43\uFF43\uFF1Aall\uFF20example.org",
        "=?utf-8?q?Vets=0D=0ABcc=3A_all=40example.org?=",
        "=?UTF-8?B?VmV0cw0KQmNjOiBhbGxAZXhhbXBsZS5vcmc=?=",
        "=\u0000?utf-8?q?Vets=0D=0ABcc=3A_all=40example.org?=",
        "Vets\\\" <all@example.org>, \"",
        "Vets\uD83D",
        "Vets \u202Egro.elpmaxe@lla",
        "a very long name of a clinic, "
      })
  void a_name_stays_a_name_whatever_is_in_it(String name) throws Exception {
    String whole = name.endsWith(", ") ? name.repeat(80) : name;
    Organisation odd = named(whole, lists.get(1).organisation());

    byte[] mail = mails(List.of(to(odd, lists.get(1))), whole).ready().get(CLINIC).content();

    Message message = parsed(mail);
    assertThat(message.getHeader().getFields())
        .map(field -> field.getName())
        .containsExactlyInAnyOrder(
            "From",
            "To",
            "Message-ID",
            "Subject",
            "MIME-Version",
            "Content-Type",
            "Date",
            "Auto-Submitted",
            "Content-Language");
    String shown = HeaderText.of(whole).replace("\uD83D", "?");
    assertThat(message.getTo().flatten())
        .map(Mailbox::getAddress)
        .containsExactly("post@harbour-vets.example.org");
    assertThat(message.getFrom())
        .map(Mailbox::getAddress)
        .containsExactly("post@coast-network.example.org");
    assertThat(message.getTo().flatten()).map(Mailbox::getName).containsExactly(shown);
    assertThat(message.getSubject())
        .isEqualTo(
            HeaderText.of("Follow-ups for " + whole + ", 1 March 2026: 7 animals")
                .replace("\uD83D", "?"));
    assertThat(new String(mail, StandardCharsets.ISO_8859_1).lines())
        .allMatch(line -> line.length() <= 998 && line.chars().allMatch(c -> c < 128));
  }

  @Test
  void a_mail_that_would_be_too_large_says_how_much_there_is_to_do_and_whom_to_ask()
      throws Exception {
    MailSettings small =
        new MailSettings(
            28, MailSettings.Details.INCLUDED, MailSettings.Overview.MAILED, 1, Optional.empty());

    ReadyMail mail =
        SampleMails.of(lists, sender, "Coast Network", WRITTEN, texts, small).ready().get(CLINIC);

    assertThat(mail.isSummary()).isTrue();
    Message message = parsed(mail.content());
    assertThat(message.getMimeType()).isEqualTo("text/plain");
    assertThat(message.getMessageId())
        .isEqualTo("<withers.2026-03-01-0123abcd.harbour-vets@coast-network.example.org>");
    assertThat(text(message))
        .isEqualTo(
            """
            Follow-ups for Harbour Vets
            As the records stood on 1 March 2026

            7 animals to follow up. 5 new, 2 still open, 1 settled since last time.
            Today: 1
            This week: 2
            This month: 3
            When possible: 1

            The list is too long for a mail. Please ask Coast Network (+1 212 555 0100) for it.
            This message was made by a program. Your coordinator reads the answers.
            --\s
            Made by Withers from the records that the network’s members sent in. Run 2026-03-01-0123abcd.
            """);
  }

  private static Organisation named(String name, Organisation organisation) {
    return new Organisation(
        organisation.id(),
        name,
        organisation.kind(),
        organisation.aliases(),
        organisation.contact(),
        organisation.mail(),
        organisation.carers(),
        organisation.policies(),
        organisation.registers());
  }

  private Mails mails(List<FollowUpList> all, String network) {
    return SampleMails.of(all, sender, network, WRITTEN, texts, MailSettings.DEFAULT);
  }

  private static FollowUpList to(Organisation reader, FollowUpList list) {
    return new FollowUpList(
        reader,
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

  private static Organisation withMail(Organisation organisation, Optional<String> mail) {
    return new Organisation(
        organisation.id(),
        organisation.name(),
        organisation.kind(),
        organisation.aliases(),
        organisation.contact(),
        mail,
        organisation.carers(),
        organisation.policies(),
        organisation.registers());
  }

  /** A workbook says when it was made. */
  private static String withoutWorkbook(byte[] mail) {
    String text = new String(mail, StandardCharsets.US_ASCII);
    return text.substring(0, text.indexOf("Content-Type: application/"));
  }
}
