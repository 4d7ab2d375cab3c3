"""Who keeps the bees: what stands on labels, hand-over sheets and registers."""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, Name, Text

Country = Literal["IE", "EU", "ENG", "WLS", "SCT", "NI"]
COUNTRIES = {
    "IE": "Ireland",
    "EU": "another country of the EU",
    "ENG": "England",
    "WLS": "Wales",
    "SCT": "Scotland",
    "NI": "Northern Ireland",
}


class Keeper(Entry):
    """The keeper's name, address and country, and the keeper's own words on papers."""

    TITLE: ClassVar[str] = "Your name on labels and papers"

    kind: Literal["keeper"] = "keeper"
    keeper: Annotated[Name, About("Name", "name or business, as it stands on labels", said="")]
    address: Annotated[
        Text,
        About("Address", "with the postcode or Eircode", said="of"),
        Field(min_length=5, max_length=300),
    ]
    country: Annotated[
        Country,
        About("Country", "whose rules are looked up", said="in", words=COUNTRIES),
    ]
    phone: Annotated[Text, About("Phone", "for buyers"), Field(max_length=60)] = ""
    registration: Annotated[
        Text,
        About("Registration", "your number as a keeper or food business, if you have one"),
        Field(max_length=60),
    ] = ""
    honey_name: Annotated[
        Text, About("Name of the honey", "as on the label", said="sells"), Field(max_length=60)
    ] = "Honey"
    label_text: Annotated[
        Text,
        About("Your words on the label", "a line or two of your own", said="label says"),
        Field(max_length=200),
    ] = ""
    terms: Annotated[
        Text,
        About("Your terms", "what a buyer of bees may complain of, until when, and what you do"),
        Field(max_length=1500),
    ] = ""
