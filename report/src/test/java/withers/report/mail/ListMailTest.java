package withers.report.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.COORDINATOR;
import static withers.report.Coast.SHELTER;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.james.mime4j.codec.DecodeMonitor;
import org.apache.james.mime4j.dom.Entity;
import org.apache.james.mime4j.dom.Message;
import org.apache.james.mime4j.dom.Multipart;
import org.apache.james.mime4j.dom.SingleBody;
import org.apache.james.mime4j.dom.TextBody;
import org.apache.james.mime4j.dom.address.Mailbox;
import org.apache.james.mime4j.message.DefaultMessageBuilder;
import org.apache.james.mime4j.stream.MimeConfig;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.organisation.Organisation;
import withers.report.Coast;
import withers.report.Samples;
import withers.report.html.Pages;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;

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
    Message message = parsed(mails(lists, "Küstennetz").ready().get(CLINIC));

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
    Message message = parsed(mails(lists, "Coast Network").ready().get(CLINIC));

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
    assertThat(text(words.get(1))).isEqualTo(new Pages(texts).list(list));
    assertThat(parts.get(1).getFilename()).isEqualTo("follow-ups-2026-03-01.xlsx");
    assertThat(parts.get(1).getDispositionType()).isEqualTo("attachment");
    assertThat(bytes(parts.get(1))).startsWith('P', 'K');
  }

  @Test
  void lines_end_with_CR_LF_and_are_ASCII_no_longer_than_RFC_5322_allows() {
    byte[] mail = mails(lists, "Küstennetz").ready().get(CLINIC);
    String text = new String(mail, StandardCharsets.ISO_8859_1);

    assertThat(text.replace("\r\n", "")).doesNotContain("\r", "\n");
    assertThat(text.chars().allMatch(c -> c < 128)).isTrue();
    assertThat(text.lines()).allMatch(line -> line.length() <= 998);
  }

  @Test
  void the_same_list_makes_the_same_message() {
    String first = withoutWorkbook(mails(lists, "Coast Network").ready().get(CLINIC));
    String again = withoutWorkbook(mails(lists, "Coast Network").ready().get(CLINIC));

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
            2,
            0,
            1,
            Optional.empty());

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

    assertThatThrownBy(() -> Mails.of(lists, mute, "Coast Network", WRITTEN, texts))
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
        mails(List.of(to(odd, lists.get(1))), "Coast\nCc: all@example.org").ready().get(CLINIC);

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

  private Mails mails(List<FollowUpList> all, String network) {
    return Mails.of(all, sender, network, WRITTEN, texts);
  }

  private static FollowUpList to(Organisation reader, FollowUpList list) {
    return new FollowUpList(
        reader,
        list.run(),
        list.asOf(),
        list.bands(),
        list.questions(),
        list.settled(),
        list.settledByPeople(),
        list.waiting(),
        list.backlog());
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

  /** Strict: what deviates from the standards is refused, not repaired. */
  private static Message parsed(byte[] mail) throws Exception {
    DefaultMessageBuilder builder = new DefaultMessageBuilder();
    builder.setMimeEntityConfig(MimeConfig.STRICT);
    builder.setDecodeMonitor(DecodeMonitor.STRICT);
    return builder.parseMessage(new ByteArrayInputStream(mail));
  }

  private static String text(Entity part) throws Exception {
    assertThat(((TextBody) part.getBody()).getMimeCharset()).isEqualTo("UTF-8");
    return new String(bytes(part), StandardCharsets.UTF_8).replace("\r\n", "\n");
  }

  private static byte[] bytes(Entity part) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (InputStream content = ((SingleBody) part.getBody()).getInputStream()) {
      content.transferTo(bytes);
    }
    return bytes.toByteArray();
  }

  /** A workbook says when it was made. */
  private static String withoutWorkbook(byte[] mail) {
    String text = new String(mail, StandardCharsets.US_ASCII);
    return text.substring(0, text.indexOf("Content-Type: application/"));
  }
}
