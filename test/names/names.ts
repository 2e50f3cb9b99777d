/**
 * A hundred first names as people have them cut. Most are plain; among them are accents, apostrophes, two words, initials, and
 * what is hard to join: an arm over a small letter, a mark beside a capital, stems side by side. In an order without a system.
 */

const list = `
Gwen, Tom, Bea, Zoë, Phil, Kit, Anna, Tim, Emma, Paul, Mary Ann, Noah, Jürgen, Oliver, Pat, Olivia, José, Sophie, Lucas, D’Arcy,
Hannah, Ben, Chloë, Daniel, Ruth, Pia, Peter, Clara, Loïc, Max, Theo, Martha, Hugo, Grace, J. R., Walter, Alice, Frank, Björn,
Nina, Anna Lena, Victor, Paula, Simon, Anaïs, Helen, Arthur, Julia, Edward, O’Neill, Laura, Henry, Maria, Oscar, Åse, Robert, Sarah,
Tina, Thomas, Vera, Jean Paul, William, Yvonne, Adam, Hélène, Flora, Heidi, Jasper, Karl, A. B., Linda, Søren, Monica, Nathan, Otto,
Jo’el, Patrick, Rachel, Stefan, Eva Maria, Teresa, Núria, Wendy, Amelia, Bruno, David, Esther, Felix, François, Gabriel, Ingrid, Lily,
Tilly, Leo, Rose May, Ida, Günther, Ka’ahu, Frida, T. S.
`;

export const firstNames: readonly string[] = list.split(',').map((name) => name.trim().replace(/\s+/g, ' '));

/** What is cut with a ring: short and long, capitals with stems and arms, ascenders, accents, two and three words. */
const ringed = `
Leo, Old Pear, Iris, Tansy, Mint, Oat, Dill, Kale, Luca, Finn, Zoë, Quill, Jane, Ida, Ella, Hugo, Emma, Paul, Noah, Anna, Gwen, Pia, Bea,
Til, Lily, Ruth, Yarrow, Fennel, Borage, Sweet Pea, Red Clover, Elder & Rue, Rose May, Old Oak, Leek, Tom, Ed, Jo, Vera, Winter Rye,
Björn, Åse, Beet, Chard, Pip, MINT, LEO, Bloody Dock, Lamb’s Ear, Lad’s Love
`;

export const ringedNames: readonly string[] = ringed.split(',').map((name) => name.trim().replace(/\s+/g, ' '));
