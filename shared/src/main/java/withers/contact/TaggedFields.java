package withers.contact;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * A contact as bytes: one byte 1, then each field that is not empty, in a fixed order, as its tag
 * (one byte), its length in bytes (four, most significant first) and its text in UTF-8. A field
 * with several values is written once for each, in the source's order.
 */
public final class TaggedFields {

  private static final int FORM = 1;
  private static final int NAME = 1;
  private static final int GIVEN_NAME = 2;
  private static final int FAMILY_NAME = 3;
  private static final int PHONE = 4;
  private static final int EMAIL = 5;
  private static final int ADDRESS_LINE = 6;
  private static final int POSTCODE = 7;
  private static final int TOWN = 8;
  private static final int REGION = 9;
  private static final int COUNTRY = 10;

  private TaggedFields() {}

  /** The contact as the source wrote it, for the vault to keep. */
  public static byte[] write(Contact contact) {
    return write(contact, UnaryOperator.identity());
  }

  static byte[] write(Contact contact, UnaryOperator<String> change) {
    Output out = new Output();
    out.field(NAME, change.apply(contact.name()));
    out.field(GIVEN_NAME, change.apply(contact.givenName()));
    out.field(FAMILY_NAME, change.apply(contact.familyName()));
    contact.phones().forEach(phone -> out.field(PHONE, change.apply(phone)));
    contact.emails().forEach(email -> out.field(EMAIL, change.apply(email)));
    contact.addressLines().forEach(line -> out.field(ADDRESS_LINE, change.apply(line)));
    out.field(POSTCODE, change.apply(contact.postcode()));
    out.field(TOWN, change.apply(contact.town()));
    out.field(REGION, change.apply(contact.region()));
    out.field(COUNTRY, change.apply(contact.country()));
    return Arrays.copyOf(out.bytes, out.size);
  }

  /**
   * Bytes as they come, without the locks of the JDK's stream: imports write them by the million.
   */
  private static final class Output {

    private static final int HEAD = 1 + Integer.BYTES;

    private byte[] bytes = new byte[192];
    private int size;

    Output() {
      bytes[size++] = FORM;
    }

    void field(int tag, String value) {
      if (!value.isEmpty()) {
        byte[] text = value.getBytes(StandardCharsets.UTF_8);
        if (size + HEAD + text.length > bytes.length) {
          bytes = Arrays.copyOf(bytes, 2 * (size + HEAD + text.length));
        }
        ByteBuffer.wrap(bytes, size, HEAD).put((byte) tag).putInt(text.length);
        System.arraycopy(text, 0, bytes, size + HEAD, text.length);
        size += HEAD + text.length;
      }
    }
  }

  /**
   * Takes the contact back.
   *
   * @throws VaultDamagedException when the bytes are not a contact
   */
  public static Contact read(byte[] bytes) {
    List<List<String>> fields = fields(ByteBuffer.wrap(bytes));
    return new Contact(
        first(fields, NAME),
        first(fields, GIVEN_NAME),
        first(fields, FAMILY_NAME),
        fields.get(PHONE),
        fields.get(EMAIL),
        fields.get(ADDRESS_LINE),
        first(fields, POSTCODE),
        first(fields, TOWN),
        first(fields, REGION),
        first(fields, COUNTRY));
  }

  /** The texts of each field, by tag. */
  private static List<List<String>> fields(ByteBuffer in) {
    List<List<String>> fields = new ArrayList<>(Collections.nCopies(COUNTRY + 1, List.of()));
    require(in.hasRemaining() && in.get() == FORM);
    while (in.hasRemaining()) {
      require(in.remaining() > Integer.BYTES);
      int tag = in.get();
      int length = in.getInt();
      require(tag >= NAME && tag <= COUNTRY && length >= 0 && length <= in.remaining());
      byte[] text = new byte[length];
      in.get(text);
      add(fields, tag, new String(text, StandardCharsets.UTF_8));
    }
    return fields;
  }

  private static void add(List<List<String>> fields, int tag, String text) {
    if (fields.get(tag).isEmpty()) {
      fields.set(tag, new ArrayList<>(1));
    }
    fields.get(tag).add(text);
  }

  private static String first(List<List<String>> fields, int tag) {
    return fields.get(tag).isEmpty() ? "" : fields.get(tag).get(0);
  }

  private static void require(boolean condition) {
    if (!condition) {
      throw new VaultDamagedException(
          "A stored contact is not as it was written; restore a backup of the vault");
    }
  }
}
