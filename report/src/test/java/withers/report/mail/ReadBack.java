package withers.report.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.apache.james.mime4j.codec.DecodeMonitor;
import org.apache.james.mime4j.dom.Entity;
import org.apache.james.mime4j.dom.Message;
import org.apache.james.mime4j.dom.SingleBody;
import org.apache.james.mime4j.dom.TextBody;
import org.apache.james.mime4j.message.DefaultMessageBuilder;
import org.apache.james.mime4j.stream.MimeConfig;

/** Mails as Mime4j 0.8.14 reads them. */
final class ReadBack {
  private ReadBack() {}

  /** Strict: what deviates from the standards is refused, not repaired. */
  static Message parsed(byte[] mail) throws Exception {
    DefaultMessageBuilder builder = new DefaultMessageBuilder();
    builder.setMimeEntityConfig(MimeConfig.STRICT);
    builder.setDecodeMonitor(DecodeMonitor.STRICT);
    return builder.parseMessage(new ByteArrayInputStream(mail));
  }

  static String text(Entity part) throws Exception {
    assertThat(((TextBody) part.getBody()).getMimeCharset()).isEqualTo("UTF-8");
    return new String(bytes(part), StandardCharsets.UTF_8).replace("\r\n", "\n");
  }

  static byte[] bytes(Entity part) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (InputStream content = ((SingleBody) part.getBody()).getInputStream()) {
      content.transferTo(bytes);
    }
    return bytes.toByteArray();
  }
}
