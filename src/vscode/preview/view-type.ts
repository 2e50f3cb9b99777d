/** By this the editor knows the previews that it opens again after a reload; as in `activationEvents` of `package.json`. */
export const previewViewType = 'tagwright.preview';
