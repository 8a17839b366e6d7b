package withers.demo;

import static withers.demo.Role.PERSON;

/** The columns of the sellers and of the supplier. */
final class SellerLayouts {

  private SellerLayouts() {}

  static Columns tollbarrow(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_PLAIN)
        .text("Pup", Field.KEY)
        .text("Chip no.", Field.CHIP)
        .text("Name", Field.NAME)
        .word("Sex", Field.SEX, Words.SEX_BREEDER)
        .day("Whelped", Field.BORN)
        .day("Sold", Field.SOLD)
        .filedName("Buyer", PERSON)
        .phone("Buyer's phone", PERSON)
        .email("Buyer's mail", PERSON)
        .address("Street", "Postcode", "Town", PERSON)
        .day("Came back", Field.RETURNED);
  }

  static Columns petShop(Columns columns) {
    return columns
        .phonesAs(Columns.PHONE_ABROAD)
        .text("sale", Field.KEY)
        .day("sold_on", Field.SOLD)
        .text("animal", Field.SPECIES)
        .text("name", Field.NAME)
        .text("sex", Field.SEX)
        .day("born", Field.BORN)
        .text("chip", Field.CHIP)
        .text("customer", Field.CLIENT)
        .givenName("first_name", PERSON)
        .familyName("last_name", PERSON)
        .phone("phone", PERSON)
        .email("email", PERSON)
        .address("address", "postcode", "town", PERSON)
        .day("returned_on", Field.RETURNED);
  }

  static Columns supply(Columns columns) {
    return columns
        .text("box", Field.KEY)
        .text("first", Field.FIRST)
        .text("last", Field.LAST)
        .day("delivered", Field.DAY)
        .text("purchaser", Field.PURCHASER)
        .text("prepaid", Field.PREPAID);
  }
}
