// A commitment as six words that friends can read to each other; the words are our own list of plain English.

/** In alphabetical order; their number is a power of two, so that each word says as many bits as the next. */
const WORD_LIST = `
acorn acre actor adobe agent alarm album alley almond amber anchor angle ankle apple apron arbor arch arena arrow
artist aspen atlas attic autumn awning badge bagel baker balcony balloon bamboo banana banjo barley baron barrel
basil basin basket bath bayou beacon bedrock beetle bell bench berry bicycle blanket blazer blossom blouse board
bobbin bonfire book boot bottle boulder bowl bracelet braid brass bread breeze brick broom brother bucket buckle
budget buffalo bugle builder bundle burrow butter button cabin cactus camel camera camp canal candy canoe canvas
canyon cape captain caramel caravan carbon cargo carpet cart castle catalog cedar ceiling celery cement chalk
chapel chapter charcoal chart cheese cherry chess chicken chief chimney chisel choir cider cinema circle circus
citrus clam classic clay clerk cliff climate clock closet cloth cloud clover coach coal cobbler cocoa coconut
collar colony column comet compass concert copper coral cork corner cosmos costume cottage cotton couch country
cousin coyote cradle crane crater crayon cream creek cricket crocus crown crystal cuckoo cup curtain cushion
cymbal daisy dancer decade deer degree delta dentist depot design desk detail dew dial diamond diary dinner
diploma ditch dock doctor dolphin domino donkey door dozen dragon drama drawer dream dress driver drum duck dune
dust eagle earring earth easel east echo eclipse editor elbow elder elephant elm emerald empire engine envelope
escape estate evening event expert express eyebrow fable fabric falcon family farmer fashion faucet felt fence
fern ferry festival fiber field fig figure filter finch finish fire fish flag flame flask flavor flint floor flour
flute folder folk forest fort forum fossil fox frame freckle freedom freight friend frog frost fruit future gable
galaxy gallery gallon game garage garlic garnet gate gazebo gecko general geyser giant giraffe glacier glass
glider globe glue goat gold goose gopher grain granite grape gravy grocer grove guest guide guitar gulf gully
habit hall hammer hammock hamster handle harp harvest hawk hay hazel heart hedge helmet hen herb heron hickory
hiker hinge history hobby holiday hollow honey hoof horizon hornet horse hotel humor hunter hurdle husky hut
hydrant ice icicle icon igloo image inch indigo ink inlet insect invite iris iron island item ivory ivy jacket
jaguar jam jasmine jazz jeans jelly jersey jewel jigsaw jockey joint joke journal journey judge juggler juice
jumper jungle junior juniper jury kayak keeper kernel key kilt king kitchen kite kiwi knee knot koala label lace
ladder lady lagoon lake lamb lantern lapel larch lasso lather lattice laundry laurel lava lavender lawn lawyer
leaf lecture legend lemon lens lentil leopard lesson letter lettuce level lever library lilac lily lime limit
linen lion liquid list lobby lobster lodge logic lotion lotus lounge lunar lunch lute machine magic magnet magpie
mail maize major mallet mango manner manor mantle maple marble market marlin marsh mask master match maze meadow
meal melody melon member memory mentor menu merchant mercury merit meteor midnight mill mineral minnow mint minute
mirror mitten mixer model modern moment monarch money month moon mop morning mosaic moss mother motor mountain
mouse mud muffin mug mule museum mushroom music mustard myth napkin nation native nature navy nectar needle
neighbor nephew nettle network nickel night noble noodle normal north notebook novel nozzle number nurse nutmeg
nylon oak oar oasis object oboe ocean octave office olive omelet onion opal opera orange orbit orchard orchid
order oregano organ origin osprey ostrich outer oval oven owl owner oxygen oyster package page paint palace palm
panda panel panther papaya paper parade parcel pardon parent park parlor parrot parsley partner party pasta
pasture patch patio patrol pattern pavement peach peanut pearl pebble pecan pedal pelican pencil penguin pepper
period permit person petal phrase piano picnic picture pigeon pilot pine pioneer pitcher pizza plaid planet plank
plaster plate plaza plow plum plumber poem poet polish polka pond pony poplar poppy porch portrait postcard potato
potter poultry powder prairie present pretzel prince printer prism prize profit program promise proverb pudding
puddle pulley pulp pumpkin puppet puppy purple purse puzzle pyramid quail quarry quarter queen quest question
quick quiet quill quince quiver quota rabbit raccoon radar radio radish raft railway rain raisin ramp ranch ranger
raven ravine razor reader recipe record reef region relay relief remedy repair reptile rescue resort reward
rhubarb rhythm ribbon rice riddle rider ridge ring ripple roast robin robot rodeo room rooster rope rose rotary
round rover royal ruby rudder ruler rural rye saddle safari salad salon salt sample sandal sandwich sapling
sardine satin sauce sausage scallop scarf scene school science scooter scout screen script sculptor season second
secret seed senate senior sequel settler seven shadow shark shawl sheep shelf shell shelter sheriff shield ship
shirt shoe shore shovel shower shrimp shrub shutter sickle signal silk silver singer sister skate sketch skillet
skirt sky sled sleeve slipper slope smoke snail snow soap soccer social socket soda sofa soil solar solid sonnet
soup south spade spaniel sparrow special spice spider spinach spiral spirit sponge spoon sport spruce square squid
stable stadium stage stair stamp star station statue steam steel step stew storm story stove strap straw street
string studio sugar suit summer sun surface swallow swan sweater swift sycamore symbol syrup system tackle tadpole
tailor talent tango tank tape tapestry target tavern taxi tea teacher temple tennis tent terrace texture theater
theory thermos thimble thread throne thumb thunder ticket tiger timber tin tinsel tissue toast toffee token tomato
tone tooth topaz torch tornado tortoise total toucan towel tower town tractor trader traffic trail travel treaty
tree trellis triangle tribute trolley trophy trout truck trumpet trunk tulip tundra tunnel turkey turnip turtle
tuxedo twelve twig umbrella uncle uniform union unit upper urban usher utensil value vanilla vapor vase vault
velvet vendor venue veranda verse vessel vest veteran viaduct victory video village vine vinegar viola violet
violin virtue vision visitor vocal voice volcano volume voyage vulture waffle wagon waist walnut walrus waltz
wander warden warm water wave wax weather weaver wedding weekend west whale wharf wheat wheel whisker whistle
willow window winter wire wisdom wizard wolf wombat wonder wood wool worker world wreath wren wrist writer yacht
yard yarn year yeast yellow yogurt young youth zebra zenith zero zigzag zinc zipper zone`;

export const ROOT_WORDS = 6;
/** Bits of the commitment that one word says; six say 60 of its 256. */
export const BITS_A_WORD = 10;

/** The first 60 bits of a commitment of hexadecimal digits, ten bits a word. */
export function rootWords(commitment: string): readonly string[] {
  const words = WORD_LIST.trim().split(/\s+/);
  const bits = BigInt(`0x${commitment.slice(0, 16)}`);
  return Array.from({ length: ROOT_WORDS }, (_, nth) => {
    const shift = BigInt(64 - (nth + 1) * BITS_A_WORD);
    return words[Number((bits >> shift) & 0x3ffn)]!;
  });
}
