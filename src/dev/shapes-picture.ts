/** File name of the picture of generators in the guide. */
export const shapesPicture = 'shapes.svg';
